import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../src/data/batch-facts'
import { likelySuperfat, lotSpread } from '../../../src/domain/batch/superfat/likely'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { weightsFor } from '../../../src/domain/batch/weigh/weights'
import type { Library } from '../../../src/domain/blend/library'
import { libraryOf, PLAIN } from './plans'

/*
 * Batches of which one thing alone varies, evenly: its share and its nineteen in twenty are then known in
 * closed form. An even draw's 2.5 % quantile of 10,000 has a standard error of sqrt(0.025 x 0.975 / 10,000) =
 * 0.16 % of its width, and of the sum of two at most 0.4 %.
 */
const SURE = libraryOf({ olive: 190, coconut: 250, jojoba: 90 }, { jojoba: 'wax-ester' })
const OLIVE: Partial<BatchOrder> = { blend: { olive: 100 }, superfat: 5 }

/** 1000 g of olive oil at 190 mg KOH/g. */
const FAT_MOL = (1000 * 190) / 56105

function drawn(
  order: Partial<BatchOrder>,
  which: 'all' | 'inCook' = 'all',
  library: Library = SURE,
) {
  const whole = { ...PLAIN, ...OLIVE, ...order }
  const weights = weightsFor(whole, 1000, library, batchFacts)
  return likelySuperfat({ order: whole, weights, library, facts: batchFacts }, which)
}

/** Within a part of the width: 1 % for one even draw, 1.6 % for the sum of two. */
function expectBetween(
  percent: { min: number; max: number },
  min: number,
  max: number,
  part = 0.01,
) {
  const within = part * (max - min)
  expect(Math.abs(percent.min - min), `min ${percent.min}`).toBeLessThan(within)
  expect(Math.abs(percent.max - max), `max ${percent.max}`).toBeLessThan(within)
}

/** One-sided Wilson bound of nought and of all hits of 10,000, and three errors of a share. */
const NONE = 5.41e-4
function expectShare(share: number, expected: number) {
  const error = 3 * Math.sqrt((expected * (1 - expected)) / 10_000)
  expect(share).toBeGreaterThan(expected - error)
  expect(share).toBeLessThan(expected + 2 * error + NONE)
}

test('where nothing varies there is one superfat, and it is the one asked', () => {
  const { percent, freeShare, anyFree, oneIn, leastSafePercent } = drawn({})
  expect(percent.min).toBeCloseTo(5, 9)
  expect(percent.max).toBeCloseTo(5, 9)
  expect(freeShare).toBeCloseTo(NONE, 5)
  expect([anyFree, oneIn, leastSafePercent]).toEqual([false, 1848, 0])
})

test('at no superfat the lye just used up is not free, and a little more is, in every lot', () => {
  expect(drawn({ superfat: 0 }).anyFree).toBe(false)
  const order = { ...PLAIN, ...OLIVE, superfat: 0 }
  const weights = weightsFor(order, 1000, SURE, batchFacts)
  const over = { ...weights, alkaliGrams: { naoh: (weights.alkaliGrams.naoh ?? NaN) * 1.0001 } }
  const likely = likelySuperfat({ order, weights: over, library: SURE, facts: batchFacts })
  expect(likely).toMatchObject({ anyFree: true, oneIn: 1 })
  expect(likely.freeShare).toBeCloseTo(1, 9)
  expect(likely.percent.min).toBeCloseTo(-0.01, 6)
})

describe('purity alone', () => {
  const koh = (superfat: number, more: Partial<BatchOrder> = {}) =>
    drawn({ alkali: { koh: 100 }, purity: { koh: 90 }, superfat, ...more })

  test('of KOH 90 %, at least, lies evenly from 90 to 92', () => {
    // By hand: 1 - 0.95 c / 90 at c = 90.05 and 91.95.
    expectBetween(koh(5).percent, 100 - (95 * 91.95) / 90, 100 - (95 * 90.05) / 90)
  })

  test('leaves free lye in the lots above what the superfat takes', () => {
    // By hand: 0.985 c > 90 from 91.3706 up: 0.6294 of 2.
    expectShare(koh(1.5).freeShare, 0.3147)
  })

  test('asks for the superfat at which one lot in 200 would hold any', () => {
    // By hand: 0.5 % of lots are above 91.99: 1 - 90 / 91.99 = 2.163 %, up to 2.2 (error 0.003 points).
    expect(koh(1).leastSafePercent).toBe(2.2)
    expect(koh(6).leastSafePercent).toBe(2.2)
  })

  test('on a certificate lies as far below as above', () => {
    const is = { koh: { certificate: 'KA-118', within: 1 } }
    // By hand: 89 to 91; 2.5 % of them from 89.05 down and from 90.95 up.
    expectBetween(
      koh(5, { purityIs: is }).percent,
      100 - (95 * 90.95) / 90,
      100 - (95 * 89.05) / 90,
    )
  })

  test('of a solution lies 2 % of it below and above', () => {
    // By hand: 49 to 51 % for 50: 1 - 0.95 c / 50 at 50.95 and 49.05.
    const { percent } = drawn({ purity: {}, lyeSolution: { naoh: 50 }, water: { ratio: 3 } })
    expectBetween(percent, 100 - (95 * 50.95) / 50, 100 - (95 * 49.05) / 50)
  })

  test('of two alkalis is drawn for each by itself', () => {
    const both = {
      naoh: { certificate: 'NA-1', within: 1 },
      koh: { certificate: 'KA-1', within: 1 },
    }
    const { percent } = drawn({
      alkali: { naoh: 50, koh: 50 },
      purity: { naoh: 98, koh: 90 },
      purityIs: both,
    })
    // By hand: one draw for both would reach 0.95 x 0.95 x (1/98 + 1/90) / 2 = 0.962 points either way. Two
    // by themselves, triangular: 0.95 x 1.0656 / 2 x 2 x (1 - sqrt(0.05)) = 0.786 (widths 1/98 and 1/90
    // nearly the same, taken as their mean 1.0656 %).
    expect(percent.max - 5).toBeGreaterThan(0.76)
    expect(percent.max - 5).toBeLessThan(0.81)
    expect(5 - percent.min).toBeGreaterThan(0.76)
    expect(5 - percent.min).toBeLessThan(0.81)
  })
})

describe('the scale alone', () => {
  test('is off by half a step of hydroxide either way', () => {
    const scale = { oilStepG: 1e-3, lyeStepG: 2, oilErrorG: 0 }
    // By hand: 3.386507 x 0.95 x 39.997 = 128.678, down to 128 g; 127.05 to 128.95 g.
    const at = (g: number) => 100 * (1 - g / 39.997 / FAT_MOL)
    expectBetween(drawn({ scale }).percent, at(128.95), at(127.05))
  })

  test('is off by its stated error', () => {
    const scale = { oilStepG: 1e-3, lyeStepG: 2, oilErrorG: 0, lyeErrorG: 4 }
    const at = (g: number) => 100 * (1 - g / 39.997 / FAT_MOL)
    expectBetween(drawn({ scale }).percent, at(131.8), at(124.2))
  })

  test('is off by half a step of oil either way', () => {
    const scale = { oilStepG: 20, lyeStepG: 1e-3, lyeErrorG: 0 }
    // By hand: 990.5 to 1009.5 g.
    expectBetween(drawn({ scale }).percent, 100 - 95 / 0.9905, 100 - 95 / 1.0095)
  })

  test('asks for the superfat that takes its slips', () => {
    const scale = { oilStepG: 1e-3, lyeStepG: 4, oilErrorG: 0 }
    // By hand: 0.5 % of slips are over 1.98 g, 0.049504 mol of 3.386507: 1.4618 %, up to 1.5.
    expect(drawn({ scale, superfat: 5 }).leastSafePercent).toBe(1.5)
  })
})

describe('acid alone', () => {
  const citric = { acid: 'citric', grams: 60, formSure: true }
  // 60 x 3 / 192.123 = 0.936900 mol, of which data/acids.json counts at least 0.98.
  const ACID_MOL = (60 * 3) / 192.123

  test('lies evenly down to its weakest', () => {
    const { percent, leastSafePercent } = drawn({ acids: [{ ...citric, alkali: 'add' }] })
    const at = (part: number) => 5 - (100 * ACID_MOL * (1 - part)) / FAT_MOL
    expectBetween(percent, at(0.9805), at(0.9995))
    // By hand: at 0.9801, 0.018644 mol of 3.386507 are 0.5505 %, up to 0.6.
    expect(leastSafePercent).toBe(0.6)
  })

  test('that is not paid for takes of the superfat’s need', () => {
    const { percent, leastSafePercent } = drawn({ acids: [{ ...citric, alkali: 'leave' }] })
    const at = (part: number) => 5 + (100 * ACID_MOL * part) / FAT_MOL
    expectBetween(percent, at(0.9805), at(0.9995))
    expect(leastSafePercent).toBe(0)
  })

  test('is weighed off by half a step', () => {
    const scale = { oilStepG: 1e-3, lyeStepG: 2, oilErrorG: 0 }
    const sure = { ...citric, strengthFromPercent: 100, certificate: 'CA-77' }
    const { percent } = drawn({ scale, acids: [{ ...sure, alkali: 'add' }], superfat: 5 })
    // By hand: hydroxide (3.217182 + 0.936900) x 39.997 = 166.151, down to 166 g, 4.150311 mol. Two slips of
    // 1 g: 0.025002 mol of hydroxide and 0.015615 of acid. 2.5 % of the sum u + 0.62455 v of two even slips
    // lie beyond 1.62455 - sqrt(8 x 0.62455 x 0.025) = 1.27111 steps: 0.031780 mol, 0.9384 points.
    const middle = 100 * (1 - (4.150311 - 0.9369) / FAT_MOL)
    expectBetween(percent, middle - 0.9384, middle + 0.9384, 0.016)
  })
})

describe('wax alone', () => {
  test('binds evenly from nothing to all', () => {
    const { percent } = drawn({ blend: { olive: 90, jojoba: 10 } })
    // By hand: olive binds 171000, wax 9000 mg KOH; lye 0.95 x 180000 = 171000.
    const at = (part: number) => 100 * (1 - 171000 / (171000 + 9000 * part))
    expectBetween(percent, at(0.025), at(0.975))
  })
})

describe('extra fat', () => {
  const extraFat = {
    percent: 10,
    of: 'oils' as const,
    oils: { coconut: 100 },
    when: 'afterCook' as const,
  }

  test('after the cook counts at the end and not in the cook', () => {
    const late = { process: 'hot' as const, extraFat }
    // By hand: 100 g of coconut bind 25000 beside 190000: 1 - 0.95 x 190 / 215 = 16.047 %.
    expect(drawn(late).percent.min).toBeCloseTo(16.0465, 3)
    expect(drawn(late, 'inCook').percent.min).toBeCloseTo(5, 9)
  })

  test('with the oils counts in the cook', () => {
    const early = { process: 'hot' as const, extraFat: { ...extraFat, when: 'withOils' as const } }
    expect(drawn(early, 'inCook').percent.min).toBeCloseTo(16.0465, 3)
  })

  test('of the blend’s own oil is weighed by itself', () => {
    const own = { ...extraFat, oils: { olive: 100 }, percent: 100 }
    const scale = { oilStepG: 20, lyeStepG: 1e-3, lyeErrorG: 0 }
    const { percent } = drawn({ scale, extraFat: { ...own, when: 'withOils' } })
    // By hand: two slips of 10 g each; 2.5 % of their sum lies beyond 20 x (1 - sqrt(0.05)) = 15.528 g.
    expectBetween(percent, 100 - 95 / (2 - 0.015528), 100 - 95 / (2 + 0.015528), 0.016)
  })
})

test('a superfat that no discount mends is told as none', () => {
  // Wax alone binds evenly 0 to 1.604 mol. The lye scale's slips of up to 5 g, 0.125 mol, are over it in
  // 0.125 / 4 / 1.604 = 1.9 % of the lots, however little lye is asked.
  const scale = { oilStepG: 1e-3, lyeStepG: 5, oilErrorG: 0, lyeErrorG: 5 }
  expect(drawn({ blend: { jojoba: 100 }, scale }).leastSafePercent).toBeNull()
})

describe('how lots lie', () => {
  const wide = libraryOf({ olive: [170, 190, 200] })

  test('of an assumed range: 95 of 100 within, each side by itself', () => {
    // By hand: 20 / 1.959964 and 10 / 1.959964.
    const { sdLow, sdHigh, ...ends } = lotSpread('olive', wide, undefined)
    expect([sdLow, sdHigh]).toEqual([
      expect.closeTo(10.2043, 3) as number,
      expect.closeTo(5.1021, 3) as number,
    ])
    expect(ends).toEqual({ low: 170, typical: 190, high: 200 })
  })

  test('of a range of no width: half a percent for 95 of 100', () => {
    const { sdLow, sdHigh } = lotSpread('olive', SURE, undefined)
    expect([sdLow, sdHigh]).toEqual([
      expect.closeTo(0.95 / 1.959964, 6) as number,
      expect.closeTo(0.95 / 1.959964, 6) as number,
    ])
  })

  test('nineteen in twenty on either side', () => {
    // By hand: the 2.5 % tails of 95 of 100 lie at 1.95996 deviations, which are the ends of the range.
    const { percent } = drawn({}, 'all', wide)
    expect(percent.min).toBeCloseTo(100 - (95 * 190) / 170, 0)
    expect(percent.max).toBeCloseTo(100 - (95 * 190) / 200, 0)
  })
})
