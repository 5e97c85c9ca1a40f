import { expect, test } from 'vitest'
import { currentOffers, daysBetween, historyOf, priceAge } from '../../../src/domain/cost/price-age'
import { offer, TODAY } from './books'

const dated = (on: string, price = 500) => offer('olive', 5, 'kg', price, { on })

test.each([
  // By hand: November has 30 days, 2028 is a leap year.
  ['2026-11-25', '2026-12-01', 6],
  ['2028-02-28', '2028-03-01', 2],
  ['2026-11-25', '2026-11-24', -1],
])('from %s to %s are %d days', (from, to, days) => {
  expect(daysBetween(from, to)).toBe(days)
})

test.each([
  ['2026-11-25', 0, 'fresh'],
  ['2026-08-28', 89, 'fresh'],
  ['2026-08-27', 90, 'ageing'],
  ['2025-11-26', 364, 'ageing'],
  ['2025-11-25', 365, 'old'],
])('a price of %s is %d days old and %s', (on, days, age) => {
  expect(priceAge(dated(on), TODAY)).toEqual({ days, age })
})

test('the latest price of a pack that is not in the future is in force, the others are its history', () => {
  const [old, now, future] = [
    dated('2025-01-10', 400),
    dated('2026-10-01', 480),
    dated('2027-01-01', 520),
  ]
  const other = offer('olive', 25, 'kg', 2000, { on: '2024-01-01' })
  const book = { offers: [now, old, future, other] }
  expect(currentOffers(book, TODAY)).toEqual([now, other])
  expect(historyOf(book, now)).toEqual([old, now, future])
})

test('of two prices of one day the later in the book stands', () => {
  const [first, second] = [dated('2026-10-01', 480), dated('2026-10-01', 490)]
  expect(currentOffers({ offers: [first, second] }, TODAY)).toEqual([second])
})

test('suppliers are the same however they are capitalised', () => {
  const [a, b] = [dated('2026-09-01'), { ...dated('2026-10-01'), supplier: ' harbour oils' }]
  expect(currentOffers({ offers: [a, b] }, TODAY)).toEqual([b])
})
