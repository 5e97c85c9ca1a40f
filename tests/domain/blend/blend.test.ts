import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  normalised,
  totalChange,
  totalShare,
  weightAverage,
  withoutTraces,
} from '../../../src/domain/blend/blend'

const shares = fc.dictionary(
  fc.stringMatching(/^[a-z]{1,6}$/u),
  fc.double({ min: 1e-6, max: 1e4, noNaN: true }),
  {
    minKeys: 1,
    maxKeys: 12,
  },
)

describe('shares scaled to 100 %', () => {
  test('keep their proportions', () => {
    expect(normalised({ olive: 1, coconut: 3 })).toEqual({ olive: 25, coconut: 75 })
  })

  test('add to 100 % and none is over it, not by the last bit either', () => {
    fc.assert(
      fc.property(shares, (blend) => {
        const scaled = normalised(blend)
        expect(totalShare(scaled)).toBeCloseTo(100, 9)
        for (const share of Object.values(scaled)) expect(share).toBeLessThanOrEqual(100)
      }),
      { seed: 20_265 },
    )
    // By plain division each of these comes to 100.00000000000001.
    for (const share of [0.007, 0.013, 17 / 3, 99.99999972, 99.99999953])
      expect(normalised({ olive: share })).toEqual({ olive: 100 })
  })

  test('stay as they are when scaled again', () => {
    fc.assert(
      fc.property(shares, (blend) => {
        const once = normalised(blend)
        expect(totalChange(once, normalised(once))).toBeLessThan(1e-9)
      }),
      { seed: 20_266 },
    )
  })

  test.for([{}, { olive: 0 }, { olive: NaN }])('cannot come of %o', (blend) => {
    expect(() => normalised(blend)).toThrow('A blend without any share')
  })
})

describe('the change from one blend to another', () => {
  test('counts what falls and what rises, in percentage points', () => {
    // By hand: 10 of olive fall, 10 of palm rise.
    expect(totalChange({ olive: 60, coconut: 40 }, { olive: 50, coconut: 40, palm: 10 })).toBe(20)
  })

  test('is 200 between blends that share no oil', () => {
    expect(totalChange({ olive: 100 }, { palm: 100 })).toBe(200)
  })

  test('is the same both ways and none to itself', () => {
    fc.assert(
      fc.property(shares, shares, (one, other) => {
        expect(totalChange(one, other)).toBeCloseTo(totalChange(other, one), 6)
        expect(totalChange(one, one)).toBe(0)
      }),
      { seed: 20_267 },
    )
  })
})

describe('a weight average', () => {
  test('weighs each value by its share', () => {
    const price: Record<string, number> = { olive: 8, coconut: 4 }
    expect(weightAverage({ olive: 75, coconut: 25 }, (oil) => price[oil] ?? NaN)).toBe(7)
  })

  test('lies between the least and the most of its values', () => {
    fc.assert(
      fc.property(shares, (blend) => {
        const values = Object.keys(blend).map((oil) => oil.length)
        const mean = weightAverage(blend, (oil) => oil.length)
        expect(mean).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9)
        expect(mean).toBeLessThanOrEqual(Math.max(...values) + 1e-9)
      }),
      { seed: 20_268 },
    )
  })

  test('does not ask for the value of an oil without a share', () => {
    const known = (oil: string) => (oil === 'olive' ? 5 : NaN)
    expect(weightAverage({ olive: 100, unknown: 0 }, known)).toBe(5)
  })
})

test('traces are shares of at most so much, negative ones among them', () => {
  const blend = { olive: 99.9, coconut: 0.1, castor: 1e-8, shea: -1e-9 }
  expect(withoutTraces(blend, 1e-7)).toEqual({ olive: 99.9, coconut: 0.1 })
})
