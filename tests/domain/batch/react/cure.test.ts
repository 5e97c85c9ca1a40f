import { describe, expect, test } from 'vitest'
import { batchCode, isClearCode } from '../../../../src/domain/batch/order/batch-code'
import { daysAfter, isDay } from '../../../../src/domain/batch/order/dates'
import { netWeight } from '../../../../src/domain/batch/result/net-weight'
import { cureOf, near, ready } from '../plans'

describe('drying', () => {
  /*
   * Common practice: in 4 to 6 weeks a bar of 28 to 33 % lye loses 8 to 15 % of its weight, one of 38 to 40 %
   * 5 to 9 %, half or more of it in the first 10 to 14 days.
   */
  test.for([
    [28, 8, 15],
    [30, 8, 15],
    [33, 8, 15],
    [38, 5, 9],
  ] as const)('of %d %% lye loses %d to %d %% in 6 weeks', ([lyeConcentration, least, most]) => {
    const { curve } = cureOf(ready({ water: { lyeConcentration } }))
    const loss = 100 * (1 - (curve.find(({ day }) => day === 42)?.left ?? NaN))
    expect(loss).toBeGreaterThan(least)
    expect(loss).toBeLessThan(most)
  })

  test('of 40 % lye may lose the 5 to 9 % of practice only where bars dry further than to 12 %', () => {
    // By hand: 1356 g poured, 1142.4 g solids; to 12 % water 4.26 % x (1 - 0.5^3.5), to 8 % 8.43 % x (1 - 0.5^4.2).
    const day42 = cureOf(ready({ water: { lyeConcentration: 40 } })).curve.find(
      ({ day }) => day === 42,
    )
    expect(100 * (1 - (day42?.lowLeft ?? NaN))).toSatisfy(near(7.97, 0.1))
    expect(100 * (1 - (day42?.left ?? NaN))).toSatisfy(near(3.89, 0.1))
  })

  test('has half of the loss behind it after 14 days', () => {
    const { curve, lossPercent } = cureOf(ready({}))
    const lost = 100 * (1 - (curve.find(({ day }) => day === 14)?.left ?? NaN))
    expect(lost).toBeGreaterThan(lossPercent / 2)
  })

  test('falls week by week between its low and its high', () => {
    const { curve } = cureOf(ready({}))
    expect(curve.map(({ day }) => day)).toEqual([0, 7, 14, 21, 28, 35, 42])
    expect(curve[0]).toEqual({ day: 0, left: 1, lowLeft: 1, highLeft: 1 })
    for (const [week, { left, lowLeft, highLeft }] of curve.entries()) {
      expect(lowLeft).toBeLessThanOrEqual(left)
      expect(left).toBeLessThanOrEqual(highLeft)
      if (week > 0) expect(left).toBeLessThan(curve[week - 1]?.left ?? NaN)
    }
  })

  test('never makes a bar heavier than it was poured', () => {
    const cure = cureOf(
      ready({ water: { lyeConcentration: 50 }, cure: { finalMoisturePercent: 30 } }),
    )
    expect(cure.lossPercent).toBe(0)
    expect(cure.curedG).toBe(cure.freshG)
  })

  test('tells the moisture of fresh soap: 334.31 g of water in 1475.55 g is 22.7 %', () => {
    const plan = ready({ purity: { naoh: 99 }, water: { lyeConcentration: 30 } })
    const [cure, { outcome }] = [cureOf(plan), plan]
    expect(cure.freshMoisturePercent).toBeCloseTo((100 * outcome.balance.waterG) / cure.freshG, 9)
    expect(cure.freshMoisturePercent).toSatisfy(near(22.7, 0.3))
  })
})

/** Common practice: 4 to 6 weeks cold, 1 to 2 hot, 4 to 8 a salt bar, 3 months and more olive alone. */
test.for([
  [{}, 42],
  [{ process: 'hot' }, 14],
  [{ additives: [{ additive: 'salt-bar', percentOfOils: 50 }] }, 56],
  [{ blend: { olive: 100 } }, 90],
  [{ cure: { days: 33 } }, 33],
] as const)('%o cures %d days', ([order, days]) => {
  expect(cureOf(ready(order)).days).toBe(days)
})

/** Directive 76/211/EEC Annex I, by hand: 100 g 4.5 g, 85 g 4.5 g, 120 g 4.5 %, 45 g 9 % up to 0.1 g. */
describe('the net weight', () => {
  test.for([
    [100, 100, 4.5, 91],
    [85.9, 85, 4.5, 76],
    [120, 120, 5.4, 109.2],
    [45.2, 45, 4.1, 36.8],
    [250, 250, 9, 232],
    [400, 400, 12, 376],
    [800, 800, 15, 770],
    [2000, 2000, 30, 1940],
  ] as const)(
    'of bars of %f g is %f g, short by %f g at most, never under %f g',
    ([driest, nominal, tolerance, least]) => {
      const net = netWeight(driest)
      expect(net?.nominalG).toBe(nominal)
      expect(net?.toleranceG).toBeCloseTo(tolerance, 9)
      expect(net?.leastG).toBeCloseTo(least, 9)
    },
  )

  test.for([4, 0, 10_001])('is not spoken of at %d g', (grams) => {
    expect(netWeight(grams)).toBeNull()
  })

  test('follows the driest bars, not the fresh ones', () => {
    const plan = ready({ cut: { barGrams: 120 } })
    const { driestG = NaN } = plan.bars ?? {}
    expect(driestG).toBeLessThan(120)
    expect(netWeight(driestG)?.nominalG).toBe(Math.floor(driestG))
  })
})

describe('a day', () => {
  test.for([
    ['2026-11-25', 42, '2027-01-06'],
    ['2028-02-28', 1, '2028-02-29'],
    ['2026-02-28', 1, '2026-03-01'],
    ['2026-11-25', 0, '2026-11-25'],
  ] as const)('%s and %d more is %s', ([day, days, later]) => {
    expect(daysAfter(day, days)).toBe(later)
  })

  test.for(['2026-02-30', '2026-13-01', '26-11-25', '2026-11-25T00:00', '', 'soon'])(
    '"%s" is none',
    (text) => {
      expect(isDay(text)).toBe(false)
      expect(() => daysAfter(text, 1)).toThrow(/is no day/u)
    },
  )
})

describe('a batch code', () => {
  test.for([
    [{ madeOn: '2026-11-25', productCode: 'L3', number: 2 }, '261125-L3-02'],
    [{ madeOn: '2026-11-25' }, '261125-01'],
    [{ productCode: 'L3' }, null],
    [{ madeOn: 'soon' }, null],
  ] as const)('of %o is %s', ([papers, code]) => {
    expect(batchCode(papers)).toBe(code)
  })

  test('has no letters that are taken for figures', () => {
    expect(['L3', 'AZ', '007'].map(isClearCode)).toEqual([true, true, true])
    expect(['LO', 'I3', 'ab', '', 'A-B'].map(isClearCode)).toEqual(Array(5).fill(false))
  })
})
