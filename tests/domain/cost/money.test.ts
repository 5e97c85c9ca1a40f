import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  amountFrom,
  ceilMinor,
  minorDigits,
  minorFrom,
  roundMinor,
} from '../../../src/domain/cost/money'

test.each([
  [0.5, 1],
  [-0.5, -1],
  [1.5, 2],
  [2.5, 3],
  [-2.5, -3],
  [2.4999, 2],
  [0.4, 0],
  [-0.4, 0],
])('%d minor units round to %d, a half away from zero', (minor, rounded) => {
  expect(roundMinor(minor)).toBe(rounded)
})

test.each([
  // In binary 1.005 × 100 is 100.49999999999999 and 8.575 × 100 is 857.4999999999999.
  [1.005, 101],
  [8.575, 858],
  [1.004, 100],
])('%d euro is %d cents in spite of binary fractions', (amount, cents) => {
  expect(minorFrom(amount, 'EUR')).toBe(cents)
})

// ISO 4217, list one: minor units.
test.each([
  ['EUR', 2],
  ['GBP', 2],
  ['JPY', 0],
  ['KRW', 0],
  ['KWD', 3],
  ['TND', 3],
])('%s has %d decimals, as ISO 4217 says', (currency, digits) => {
  expect(minorDigits(currency)).toBe(digits)
})

test('an amount of whole minor units comes back as it was', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -1e12, max: 1e12 }),
      fc.constantFrom('EUR', 'JPY', 'KWD'),
      (minor, currency) => {
        expect(minorFrom(amountFrom(minor, currency), currency)).toBe(minor)
      },
    ),
  )
})

test('rounding is never off by more than half a unit, and up never down', () => {
  // 1e-14 of the largest, and a little.
  const noise = 2e-5
  fc.assert(
    fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (minor) => {
      expect(Math.abs(roundMinor(minor) - minor)).toBeLessThanOrEqual(0.5 + noise)
      expect(ceilMinor(minor) - minor).toBeGreaterThan(-noise)
      expect(ceilMinor(minor) - minor).toBeLessThan(1)
      expect(Object.is(roundMinor(minor), -0)).toBe(false)
    }),
  )
})
