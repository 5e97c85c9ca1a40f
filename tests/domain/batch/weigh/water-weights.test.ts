import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../../src/data/batch-facts'
import type { WeighedAcid } from '../../../../src/domain/batch/weigh/acid-weights'
import type { WeighedAlkali } from '../../../../src/domain/batch/weigh/alkali-weights'
import { type BatchFacts, factOf } from '../../../../src/domain/batch/order/facts'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import {
  jugWaterG,
  lyeBasisG,
  lyeWaterG,
  waterFor,
  waterWeights,
} from '../../../../src/domain/batch/weigh/water-weights'
import { PLAIN } from '../plans'

const FLAKES: WeighedAlkali = {
  kind: 'koh',
  form: 'dry',
  grams: 100,
  pureG: 90,
  equivalentsMol: 90 / 56.105,
  waterG: 0,
}
const SOLUTION: WeighedAlkali = {
  kind: 'naoh',
  form: 'solution',
  grams: 100,
  pureG: 50,
  equivalentsMol: 50 / 39.997,
  waterG: 50,
}
const ACID: WeighedAcid = {
  use: { acid: 'acetic', grams: 21, strengthPercent: 5, alkali: 'add' },
  fact: factOf(batchFacts.acids, 'acetic'),
  grams: 21,
  pureG: 1,
  equivalentsMol: 1 / 60.052,
  waterG: 20,
}

/** A milk of 80 % water and 4 % fat. */
const facts: BatchFacts = {
  ...batchFacts,
  liquids: new Map([
    ['milk', { ...factOf(batchFacts.liquids, 'cow-milk'), waterPercent: 80, fatPercent: 4 }],
  ]),
}

test.for([
  [{ ratio: 2 }, 200],
  [{ percentOfOils: 30 }, 300],
  // 25 g in 100 g of lye stand in 75 g of water: 3 to 1.
  [{ lyeConcentration: 25 }, 300],
  [{ onlyFromLiquids: true as const }, 0],
] as const)('water for 100 g of hydroxide and 1000 g of oils by %o is %d g', ([rule, grams]) => {
  expect(waterFor(rule, 100, 1000)).toBeCloseTo(grams, 9)
})

test('water is reckoned on flakes as weighed or pure, and always on what is pure in a solution', () => {
  const both = [FLAKES, SOLUTION]
  expect(lyeBasisG(PLAIN, both)).toBe(150)
  expect(lyeBasisG({ ...PLAIN, waterOn: 'weighed' }, both)).toBe(150)
  expect(lyeBasisG({ ...PLAIN, waterOn: 'pure' }, both)).toBe(140)
})

test('water in the jug has the cook’s and not what waits for trace; the lye’s the other way', () => {
  const ledger = {
    askedG: 1000,
    plainG: 100,
    cookG: 50,
    fromSolutionsG: 20,
    fromAcidsG: 10,
    fromLiquidsG: 40,
    fromLiquidsInLyeG: 30,
  }
  expect(jugWaterG(ledger)).toBe(100 + 50 + 20 + 10 + 30)
  expect(lyeWaterG(ledger)).toBe(100 + 20 + 10 + 40)
})

describe('where the water comes from', () => {
  const reckoned = (order: Partial<BatchOrder>, oilG = 1000) =>
    waterWeights(
      { ...PLAIN, ...order },
      { alkalis: [FLAKES, SOLUTION], acids: [ACID], oilG },
      facts,
    )

  test('is told in full, and plain water is the rest', () => {
    const liquids = [
      { liquid: 'milk', grams: 50, when: 'lye' as const },
      { liquid: 'milk', grams: 10, when: 'trace' as const },
    ]
    const { ledger, missingG, liquids: weighed } = reckoned({ water: { ratio: 2 }, liquids })
    // By hand: 2 x (100 + 50) asked; 50 in the solution, 20 in the vinegar, 0.8 x 60 in the milk.
    expect(ledger).toEqual({
      askedG: 300,
      fromSolutionsG: 50,
      fromAcidsG: 20,
      fromLiquidsG: 48,
      fromLiquidsInLyeG: 40,
      plainG: 300 - 50 - 20 - 48,
      cookG: 0,
    })
    expect(missingG).toBe(182)
    expect(weighed.map(({ grams, waterG, fatG }) => [grams, waterG, fatG])).toEqual([
      [50, 40, 2],
      [10, 8, 0.4],
    ])
  })

  test('plain water and the cook’s are rounded up on the scale', () => {
    const scale = { oilStepG: 5, lyeStepG: 1 }
    const cook = { extraWaterPercentOfOils: 3.1 }
    const { ledger } = reckoned({ water: { ratio: 2.04 }, scale, cook })
    // By hand: 306 - 70 = 236, up to 240; 31, up to 35.
    expect([ledger.plainG, ledger.cookG]).toEqual([240, 35])
  })

  test('is never less than none, and what is over is told', () => {
    const liquids = [{ liquid: 'milk', grams: 400, when: 'lye' as const }]
    const { ledger, missingG } = reckoned({ water: { ratio: 2 }, liquids })
    // By hand: 300 - 70 - 320.
    expect(ledger.plainG).toBe(0)
    expect(missingG).toBe(-90)
  })

  test('a liquid in the place of a part of it is as much as holds that part, to the scale’s mark', () => {
    const of = (more: { waterPercent?: number; fatPercent?: number }) =>
      reckoned({
        water: { ratio: 2 },
        scale: { oilStepG: 2, lyeStepG: 1 },
        liquids: [{ liquid: 'milk', replacesPercent: 30, when: 'lye' as const, ...more }],
      }).liquids[0]
    // By hand: 90 g of water in milk of 80 % are 112.5 g, to 112; of 60 % they are 150 g.
    expect(of({})).toMatchObject({ grams: 112, fatG: 4.48 })
    expect(of({})?.waterG).toBeCloseTo(89.6, 9)
    expect(of({ waterPercent: 60, fatPercent: 10 })).toMatchObject({
      grams: 150,
      waterG: 90,
      fatG: 15,
    })
  })
})
