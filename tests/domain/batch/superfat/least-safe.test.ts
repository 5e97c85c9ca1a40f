import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../../src/data/batch-facts'
import {
  askedTogether,
  leastSafePercent,
  purer,
} from '../../../../src/domain/batch/superfat/least-safe'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { type Errors, EXACT } from '../../../../src/domain/batch/superfat/reach'
import { weightsFor } from '../../../../src/domain/batch/weigh/weights'
import { libraryOf, PLAIN } from '../plans'

const from = libraryOf({ olive: [180, 190, 200] })
const KOH: Partial<BatchOrder> = { alkali: { koh: 100 }, purity: { koh: 90 } }
const CONTENTS: Errors = { ...EXACT, contents: true }
const ALL: Errors = { oilG: 2, lyeG: 1, contents: true }

function reckoned(order: Partial<BatchOrder>) {
  const whole: BatchOrder = { ...PLAIN, blend: { olive: 100 }, ...order }
  const weights = weightsFor(whole, 1000, from, batchFacts)
  return { order: whole, weights, library: from, facts: batchFacts }
}

describe('the discount at which the leanest lots leave no lye', () => {
  const citric = { acid: 'citric', grams: 20, formSure: true }
  // By hand: T = 1000 x 190 / 56105 = 3.386507 mol; the leanest 1000 x 180 / 56105 = 3.208270.
  test.for<readonly [string, Partial<BatchOrder>, Errors, number]>([
    // 1 - 3.208270 / 3.386507 = 5.263 %.
    ['for the lots alone', {}, EXACT, 5.3],
    // KOH of 90 may be 92: 1 - 3.208270 / (92/90) / 3.386507 = 7.323 %.
    ['for the bag at its purest', KOH, CONTENTS, 7.4],
    // 998 g of oil: 3.201854 mol; 1 g of KOH of 92 %: 0.016398 mol. 1 - 3.185456 / (92/90) / T = 7.982 %.
    ['for both scales off', KOH, ALL, 8],
    // 20 g of citric acid take 0.312300 mol; 19 g at 0.98 of it 0.290750. ((3.201854 + 0.290750 - 0.016398)
    // x 90/92 - 0.312300) / T = 0.911954.
    [
      'for acid that is paid for, at its weakest',
      { ...KOH, acids: [{ ...citric, alkali: 'add' }] },
      ALL,
      8.9,
    ],
    // Without the 0.312300 paid: 3.476206 x 90/92 / T = 1.004167, so none is needed.
    [
      'and 0 where unpaid acid takes more than that',
      { ...KOH, acids: [{ ...citric, alkali: 'leave' }] },
      ALL,
      0,
    ],
  ])('%s', ([, order, errors, percent]) => {
    expect(leastSafePercent(reckoned(order), errors)).toBe(percent)
  })

  test('is none where the scale may be off by all the oil', () => {
    expect(leastSafePercent(reckoned({}), { ...EXACT, oilG: 1000 })).toBeNull()
    // Of 999 g, one gram is left: 100 x (1 - 180 / 190 / 1000) = 99.905 %, up to 100.
    expect(leastSafePercent(reckoned({}), { ...EXACT, oilG: 999 })).toBe(100)
  })
})

test('how much purer the hydroxide may be is weighed by what each alkali does', () => {
  expect(purer(reckoned(KOH), EXACT)).toBe(1)
  expect(purer(reckoned(KOH), CONTENTS)).toBeCloseTo(92 / 90, 12)
  const both = { alkali: { naoh: 25, koh: 75 }, purity: { naoh: 98, koh: 90 } }
  // By hand: a quarter at 100/98 and three at 92/90.
  expect(purer(reckoned(both), CONTENTS)).toBeCloseTo(0.25 * (100 / 98) + 0.75 * (92 / 90), 12)
})

test('a discount and extra fat come together', () => {
  // By hand: 1 - 0.95 x 4 / (4 + 1) = 24 %.
  expect(askedTogether(5, 4, 1)).toBeCloseTo(24, 9)
})
