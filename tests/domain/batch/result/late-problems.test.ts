import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../../src/data/batch-facts'
import {
  ifraProblems,
  jugConcentrationPercent,
  lateProblems,
  nothingLeft,
} from '../../../../src/domain/batch/result/late-problems'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { type Weights, weightsFor } from '../../../../src/domain/batch/weigh/weights'
import { libraryOf, PLAIN } from '../plans'

const from = libraryOf({ olive: [184, 190, 196] })

/** An order as weighed, with weights put in the place of those reckoned. */
function weighed(order: Partial<BatchOrder>, weights: Partial<Weights> = {}) {
  const whole: BatchOrder = { ...PLAIN, blend: { olive: 100 }, water: { ratio: 3 }, ...order }
  const reckoned = weightsFor(whole, 1000, from, batchFacts)
  return { order: whole, weights: { ...reckoned, ...weights }, library: from, facts: batchFacts }
}

function pathsOf(order: Partial<BatchOrder>, weights?: Partial<Weights>) {
  return lateProblems(weighed(order, weights)).map(({ path }) => path)
}

describe('what the scale shows as 0 g', () => {
  const scale = { oilStepG: 1, lyeStepG: 1 }
  const acid = { acid: 'citric', alkali: 'add' as const }
  const lost = (order: Partial<BatchOrder>, weights: Partial<Weights>) => {
    const { order: whole, weights: all } = weighed({ scale, ...order }, weights)
    return nothingLeft(all, whole).map(({ path }) => path)
  }

  test.for<readonly [string, Partial<BatchOrder>, Partial<Weights>, readonly string[]]>([
    ['an oil', {}, { oilGrams: { olive: 1000, castor: 0 } }, ['blend.castor']],
    ['hydroxide', {}, { alkaliGrams: { naoh: 0, koh: 5 } }, ['alkali.naoh']],
    ['an acid', { acids: [{ ...acid, grams: 0.4 }] }, { acidGrams: [0] }, ['acids[0]']],
    [
      'the second acid, by the oils',
      {
        acids: [
          { ...acid, grams: 5 },
          { ...acid, percentOfOils: 0.01 },
        ],
      },
      { acidGrams: [5, 0] },
      ['acids[1]'],
    ],
    ['no acid where none was asked', { acids: [{ ...acid, grams: 0 }] }, { acidGrams: [0] }, []],
    [
      'an additive',
      { additives: [{ additive: 'kaolin', percentOfOils: 0.01 }] },
      { additiveGrams: [0] },
      ['additives[0]'],
    ],
    [
      'a scent',
      { fragrance: { blend: { lavender: 100 }, percentOfOils: 0.01 } },
      { fragranceGrams: { lavender: 0 } },
      ['fragrance.blend.lavender'],
    ],
    [
      'no scent where none was asked',
      { fragrance: { blend: { lavender: 100 }, percentOfOils: 0 } },
      { fragranceGrams: { lavender: 0 } },
      [],
    ],
    ['nothing, where no scale rounds', { scale: undefined }, { oilGrams: { olive: 0 } }, []],
  ])('%s', ([, order, weights, paths]) => {
    expect(lost(order, weights)).toEqual(paths)
  })
})

describe('a batch is refused', () => {
  const { water } = weighed({}).weights

  test('with acids that take all the hydroxide there is', () => {
    const acids = [{ acid: 'citric', grams: 60, formSure: true, alkali: 'leave' as const }]
    const of = (naoh: number) => pathsOf({ acids }, { alkaliGrams: { naoh } })
    // 60 g take 0.936900 mol, 37.473 g.
    expect(of(37.5)).not.toContain('acids')
    expect(of(37.4)).toContain('acids')
  })

  test('with an acid beyond its largest dose, pure acid on the oils', () => {
    // data/acids.json: citric acid at most 6 %, of acetic acid 4 %, here of 5 % vinegar.
    const citric = { acid: 'citric', formSure: true, alkali: 'add' as const }
    expect(pathsOf({ acids: [{ ...citric, grams: 60 }] })).toEqual([])
    expect(pathsOf({ acids: [{ ...citric, grams: 60.1 }] })).toEqual(['acids[0]'])
    const vinegar = { acid: 'acetic', strengthPercent: 5, alkali: 'leave' as const }
    const lots = (grams: number) => pathsOf({ acids: [citric, { ...vinegar, grams }] })
    expect(lots(799)).not.toContain('acids[1]')
    expect(lots(801)).toContain('acids[1]')
  })

  test('with more water brought than asked, beyond half a percent and a step for each weighing', () => {
    const over = (waterOverG: number, order: Partial<BatchOrder> = {}) =>
      pathsOf(order, { waterOverG, water: { ...water, askedG: 400 } })
    expect([over(2), over(2.01)]).toEqual([[], ['water.ratio']])
    const scale = { oilStepG: 3, lyeStepG: 1 }
    expect([over(5, { scale }), over(5.01, { scale })]).toEqual([[], ['water.ratio']])
    const liquids = [{ liquid: 'tea', grams: 20, when: 'lye' as const }]
    const brewed = { scale, liquids }
    expect([over(8, brewed), over(8.01, brewed)]).toEqual([[], ['water.ratio']])
  })

  test('with more ice than plain water, the cook’s counted', () => {
    const ice = (iceGrams: number) =>
      pathsOf({ lye: { iceGrams } }, { water: { ...water, plainG: 300, cookG: 50 } })
    expect(ice(350)).not.toContain('lye.iceGrams')
    expect(ice(350.1)).toContain('lye.iceGrams')
  })

  test('with oils that weigh no more than the scale may be off', () => {
    const scale = { oilStepG: 10, lyeStepG: 1 }
    expect(pathsOf({ scale }, { oilGrams: { olive: 10 } })).toContain('scale.oilStepG')
    expect(pathsOf({ scale }, { oilGrams: { olive: 10.1 } })).not.toContain('scale.oilStepG')
    const extraFatGrams = { olive: 100 }
    const extraFat = { percent: 10, of: 'oils' as const, oils: { olive: 100 } }
    const late = {
      scale,
      process: 'hot' as const,
      extraFat: { ...extraFat, when: 'afterCook' as const },
    }
    expect(pathsOf(late, { oilGrams: { olive: 10 }, extraFatGrams })).toContain('scale.oilStepG')
  })
})

test('the jug holds hydroxide with its impurities in all water that is there', () => {
  const { weights, ...rest } = weighed({ alkali: { naoh: 50, koh: 50 }, lyeSolution: { koh: 50 } })
  const ledger = {
    askedG: 0,
    plainG: 200,
    cookG: 20,
    fromSolutionsG: 60,
    fromAcidsG: 0,
    fromLiquidsG: 0,
    fromLiquidsInLyeG: 0,
  }
  const jug = { ...weights, alkaliGrams: { naoh: 80, koh: 120 }, water: ledger }
  // By hand: 80 g of flakes and 60 g in 120 g of solution; water 200 + 20 + 60: 140 / 420.
  expect(jugConcentrationPercent({ ...rest, weights: jug })).toBeCloseTo(100 / 3, 9)
})

test('a fragrance beyond what its certificate allows in the finished soap is refused', () => {
  const of = (grams: number, ifraMostPercent: number | undefined) => {
    const fragrance = {
      blend: { lavender: 100 },
      grams,
      certificates: { lavender: { ifraMostPercent } },
    }
    return ifraProblems(weighed({ fragrance }), 1250).map(({ path, message }) => [path, message])
  }
  // By hand: 2 % of 1250 g are 25 g.
  expect(of(25, 2)).toEqual([])
  expect(of(25, undefined)).toEqual([])
  expect(of(26, 2)).toEqual([
    ['fragrance.certificates.lavender', expect.stringMatching(/2\.08 %.*2 %, which is 25\.0 g/u)],
  ])
  expect(ifraProblems(weighed({}), 1250)).toEqual([])
})
