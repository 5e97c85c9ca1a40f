import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../src/data/batch-facts'
import { library } from '../../src/data/library'
import { planBatch } from '../../src/domain/batch/result/plan'
import { sum } from '../../src/domain/batch/weigh/weights'
import {
  type BatchChoices,
  orderFor,
  plainOrderFor,
  USUAL_LYE,
  withProcess,
} from '../../src/state/batch-choices'
import { EXAMPLE_WORK } from '../../src/state/first-work'

const BLEND = { olive: 60, coconut: 40 }
const PLAIN: BatchChoices = EXAMPLE_WORK.batch

function planned(choices: Partial<BatchChoices>) {
  const plan = planBatch(orderFor(BLEND, { ...PLAIN, ...choices }), library, batchFacts)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  return plan
}

describe('the order that choices make', () => {
  test('holds nothing that only the page needs', () => {
    const run = { ticks: { water: 5 }, actual: { water: 6 }, cautionRead: true }
    const order = orderFor(BLEND, { ...PLAIN, unit: 'oz', paper: 'Letter', run })
    expect(order).toEqual(orderFor(BLEND, PLAIN))
    expect(Object.keys(order).filter((key) => ['unit', 'paper', 'run'].includes(key))).toEqual([])
  })

  test('has one size: a mould or bars go before the weight of oils', () => {
    const bars = { count: 10, grams: 100, weight: 'wet' } as const
    expect(orderFor(BLEND, { ...PLAIN, bars })).not.toHaveProperty('oilGrams')
    const mould = { volumeMl: 1000 }
    expect(orderFor(BLEND, { ...PLAIN, mould })).not.toHaveProperty('oilGrams')
  })

  test('shares the work between two alkalis as said, each with its purity', () => {
    const secondAlkali = { percent: 20, by: 'weight' } as const
    expect(orderFor(BLEND, { ...PLAIN, secondAlkali })).toMatchObject({
      alkali: { naoh: 80, koh: 20 },
      alkaliBy: 'weight',
      purity: { naoh: PLAIN.purity.naoh, koh: 90 },
    })
    const turned = orderFor(BLEND, { ...PLAIN, alkali: 'koh', secondAlkali })
    expect(turned).toMatchObject({ alkali: { koh: 80, naoh: 20 }, purity: PLAIN.purity })
  })

  test('weighs the lye of a small batch to 0.1 g until its step is picked', () => {
    const step = (choices: Partial<BatchChoices>) =>
      orderFor(BLEND, { ...PLAIN, ...choices }).scale?.lyeStepG
    expect([step({ oilGrams: 499 }), step({ oilGrams: 500 })]).toEqual([0.1, 1])
    expect(step({ oilGrams: 499, lyeStepChosen: true })).toBe(1)
    expect(step({ oilGrams: 499, scale: { oilStepG: 1, lyeStepG: 0.5 } })).toBe(0.5)
    expect(step({ oilGrams: 499, scale: { oilStepG: 0.01, lyeStepG: 0.01 } })).toBe(0.01)
  })

  test('has no purity for an alkali that comes dissolved', () => {
    const order = orderFor(BLEND, { ...PLAIN, lyeSolution: { naoh: 50 } })
    expect(order.purity).toEqual({})
    expect(planned({ lyeSolution: { naoh: 50 } }).figures.lyeConcentrationPercent).toBeGreaterThan(
      0,
    )
  })

  test('takes parts of fat and fragrance in any proportion', () => {
    const { extraFat, fragrance } = orderFor(BLEND, {
      ...PLAIN,
      extraFat: { percent: 5, of: 'oils', oils: { shea: 1, castor: 3 }, when: 'withOils' },
      fragrance: { percentOfOils: 2, blend: { lavender: 2, lemon: 2 } },
    })
    expect(extraFat?.oils).toEqual({ shea: 25, castor: 75 })
    expect(fragrance?.blend).toEqual({ lavender: 50, lemon: 50 })
  })

  test('leaves parts that come to nothing to be refused', () => {
    const fragrance = { percentOfOils: 2, blend: { lavender: 0 } }
    const order = orderFor(BLEND, { ...PLAIN, fragrance })
    const plan = planBatch(order, library, batchFacts)
    expect(plan).toMatchObject({ status: 'invalid', problems: [{ path: 'fragrance.blend' }] })
  })
})

test('the order for comparing blends has oils, alkali and water alone, whatever else is made', () => {
  const choices: BatchChoices = {
    ...PLAIN,
    mould: { volumeMl: 500 },
    acids: [{ acid: 'citric', percentOfOils: 1, alkali: 'add' }],
    liquids: [{ liquid: 'goat-milk', grams: 900, when: 'lye' }],
    lyeSolution: { naoh: 50 },
    water: { onlyFromLiquids: true },
  }
  const plan = planBatch(plainOrderFor(BLEND, choices), library)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  expect(sum(plan.oilGrams)).toBe(PLAIN.oilGrams)
  expect([plan.acidGrams, plan.liquidGrams]).toEqual([[], []])
})

describe('another process', () => {
  const cold = { ...EXAMPLE_WORK.batch, water: USUAL_LYE.cold }

  test('moves a lye that nobody said to its own usual one, and back', () => {
    const hot = { ...cold, ...withProcess(cold, 'hot') }
    expect(hot.water).toEqual({ lyeConcentration: 28 })
    expect({ ...hot, ...withProcess(hot, 'cold') }.water).toEqual({ lyeConcentration: 33 })
  })

  test.for([
    [{ water: { lyeConcentration: 33 }, waterTyped: true }],
    [{ water: { lyeConcentration: 36 } }],
    [{ water: { ratio: 2 } }],
  ] satisfies [Partial<BatchChoices>][])('leaves what was said by hand: %o', ([said]) => {
    const hot = { ...cold, ...said, ...withProcess({ ...cold, ...said }, 'hot') }
    expect(hot.process).toBe('hot')
    expect(hot.water).toEqual(said?.water)
    expect({ ...hot, ...withProcess(hot, 'cold') }.water).toEqual(said.water)
  })

  test('takes what belongs to a cook along when it ends', () => {
    const extraFat = { percent: 5, of: 'oils', oils: { shea: 100 }, when: 'afterCook' } as const
    const hot = { ...cold, process: 'hot' as const, cook: { extraWaterPercentOfOils: 5 }, extraFat }
    const back = { ...hot, ...withProcess(hot, 'cold') }
    expect([back.process, back.cook, back.extraFat?.when]).toEqual([
      undefined,
      undefined,
      'withOils',
    ])
  })
})

test('a paste asks for no bars, no cut and no cure, and the choices keep them', () => {
  const bar = {
    ...EXAMPLE_WORK.batch,
    bars: { count: 10, grams: 100, weight: 'cured' as const },
    cure: { days: 30 },
  }
  const paste = { ...bar, alkali: 'koh' as const, purityPercent: 90 }
  const order = orderFor({ olive: 100 }, paste)
  expect([order.bars, order.cut, order.cure]).toEqual([undefined, undefined, undefined])
  expect(order.oilGrams).toBe(paste.oilGrams)
  expect(orderFor({ olive: 100 }, { ...paste, alkali: 'naoh' }).bars).toEqual(bar.bars)
})
