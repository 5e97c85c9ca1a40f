import { describe, expect, test } from 'vitest'
import { alkaliEquivalents } from '../../../../src/domain/chemistry/alkali'
import { JOJOBA_REST } from '../../../../src/domain/chemistry/ester'
import { fatOutcome } from '../../../../src/domain/batch/react/outcome'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import type { ReadyPlan } from '../../../../src/domain/batch/result/plan'
import { libraryOf, near, ready } from '../plans'

/** A thousandth of the batch, as the mass balance is asked to close. */
const CLOSES = 0.001

/** All that comes out, g. */
function outOf({ outcome }: ReadyPlan): number {
  const { soapG, glycerolG, unreactedFatG, waxAlcoholG, freeAlkaliG } = outcome.balance
  const { saltsG, additivesG, fragranceG, waterG } = outcome.balance
  return [
    ...[soapG, glycerolG, unreactedFatG, waxAlcoholG, freeAlkaliG],
    ...[saltsG, additivesG, fragranceG, waterG],
  ].reduce((sum, grams) => sum + grams, 0)
}

/*
 * Molecules by hand, g/mol: tristearin C57H110O6 891.50, sodium stearate C18H35O2Na 306.46, potassium stearate
 * 322.57, glycerol 92.09, stearic acid 284.48, water 18.015. SV of tristearin 3 x 56105 / 891.50 = 188.80,
 * of stearic acid 56105 / 284.48 = 197.22.
 */
describe('the soap of pure fats, from molecules', () => {
  const tristearin = libraryOf({ tristearin: (3 * 56105) / 891.5 })
  const acid = libraryOf({ stearic: 56105 / 284.48 }, { stearic: 'free-acid' })

  test('tristearin and sodium hydroxide', () => {
    const plan = ready({ blend: { tristearin: 100 }, superfat: 10 }, tristearin)
    const mol = (0.9 * 1000) / 891.5
    expect(plan.outcome.balance.soapG).toSatisfy(near(mol * 3 * 306.46, 0.1))
    expect(plan.outcome.balance.glycerolG).toSatisfy(near(mol * 92.094, 0.02))
    expect(plan.outcome.balance.unreactedFatG).toSatisfy(near(100, 0.001))
    expect(plan.outcome.balance.waterFormedG).toBe(0)
  })

  test('tristearin and potassium hydroxide', () => {
    const plan = ready(
      { blend: { tristearin: 100 }, superfat: 10, alkali: { koh: 100 } },
      tristearin,
    )
    expect(plan.outcome.balance.soapG).toSatisfy(near(((0.9 * 1000) / 891.5) * 3 * 322.57, 0.1))
  })

  test('stearic acid and sodium hydroxide: soap and water, no glycerol', () => {
    const plan = ready({ blend: { stearic: 100 }, superfat: 10 }, acid)
    const mol = (0.9 * 1000) / 284.48
    expect(plan.outcome.balance.soapG).toSatisfy(near(mol * 306.46, 0.1))
    expect(plan.outcome.balance.glycerolG).toBe(0)
    expect(plan.outcome.balance.waterFormedG).toSatisfy(near(mol * 18.015, 0.02))
  })

  test('a wax gives soap and a fatty alcohol of 312.9 g/mol, no glycerol', () => {
    const wax = libraryOf(
      { jojoba: 92.6, stearic: 205 },
      { jojoba: 'wax-ester', stearic: 'free-acid' },
    )
    const plan = ready({ blend: { jojoba: 50, stearic: 50 }, superfat: 10 }, wax)
    const mol = (0.9 * 500 * 92.6) / 56105
    expect(plan.outcome.balance.waxAlcoholG).toSatisfy(near(mol * 312.9, 0.1))
    expect(plan.outcome.balance.glycerolG).toBe(0)
    // All of a wax is fatty matter: acids, alcohols, and the water that setting them free takes; so is an acid.
    expect(plan.outcome.totalFattyMatterG).toSatisfy(near(1000 + mol * 18.015, 0.05))
  })
})

/** A kg of a triglyceride of so many mg KOH/g, all of it soap. */
function allReacted(saponificationValue: number) {
  const part = {
    id: 'fat',
    from: 'oil' as const,
    grams: 1000,
    equivalentsMol: alkaliEquivalents(1000, saponificationValue),
    kind: 'triglyceride' as const,
    late: false,
    reactingPart: 1,
    waxRest: JOJOBA_REST,
  }
  const reaction = { reactedMol: part.equivalentsMol, freeMol: 0, cookFraction: 1, lateFraction: 1 }
  return fatOutcome(part, reaction, { naoh: 1, koh: 0 })
}

test('glycerol made is 0.7675 g per g of NaOH and 0.5471 g per g of KOH, by hand 92.094 / 3 M', () => {
  const { glycerolG } = allReacted(190)
  const mol = (1000 * 190) / 56_105.6
  expect(glycerolG / (mol * 39.997)).toBeCloseTo(0.767508, 4)
  expect(glycerolG / (mol * 56.1056)).toBeCloseTo(0.547143, 4)
})

/** By hand, 1 - SV x (92.094/3 - 18.015) / 56106. */
test.for([
  [180, 0.95931],
  [190, 0.95705],
  [200, 0.95479],
  [257, 0.9419],
] as const)('a fat of %d mg KOH/g holds %f of fatty acids', ([value, fraction]) => {
  expect(allReacted(value).fattyMatterG / 1000).toBeCloseTo(fraction, 4)
})

describe('everything weighed comes out again, to a thousandth', () => {
  test.for<readonly [string, Partial<BatchOrder>]>([
    ['a plain batch', {}],
    ['both alkalis, impure', { alkali: { naoh: 30, koh: 70 }, purity: { naoh: 97, koh: 88 } }],
    ['a solution', { lyeSolution: { naoh: 50 } }],
    ['acids', { acids: [{ acid: 'citric-monohydrate', grams: 20, alkali: 'add' as const }] }],
    [
      'milk, salt, lactate and a scent',
      {
        liquids: [{ liquid: 'goat-milk', replacesPercent: 60, when: 'lye' as const }],
        additives: [
          { additive: 'salt', percentOfOils: 1 },
          { additive: 'sodium-lactate-60', percentOfOils: 2 },
        ],
        fragrance: { percentOfOils: 3, blend: { lavender: 100 } },
      },
    ],
    ['a wax and a free acid', { blend: { jojoba: 10, 'stearic-acid-65': 20, olive: 70 } }],
    [
      'fat after the cook',
      {
        process: 'hot' as const,
        superfat: 0,
        extraFat: {
          percent: 6,
          of: 'oils' as const,
          oils: { shea: 100 },
          when: 'afterCook' as const,
        },
        cook: { extraWaterPercentOfOils: 5 },
      },
    ],
  ])('%s', ([, order]) => {
    const plan = ready(order)
    expect(Math.abs(outOf(plan) / plan.totalGrams - 1)).toBeLessThan(CLOSES)
  })
})

describe('fat stirred in after the cook', () => {
  const from = libraryOf({ olive: 190, shea: 183 })
  const extraFat = { percent: 6, of: 'oils', oils: { shea: 100 }, when: 'afterCook' } as const
  const order = { blend: { olive: 100 }, process: 'hot', extraFat } as const

  test('is what is left over, where the cook took all alkali', () => {
    const { fats, balance } = ready({ ...order, superfat: 0 }, from).outcome
    expect(fats.find(({ part }) => part.late)?.unreactedG).toBeCloseTo(60, 6)
    expect(balance.unreactedFatG).toBeCloseTo(60, 6)
  })

  test('is joined by what the cook left', () => {
    const { balance } = ready({ ...order, superfat: 2 }, from).outcome
    expect(balance.unreactedFatG).toBeCloseTo(80, 6)
  })
})
