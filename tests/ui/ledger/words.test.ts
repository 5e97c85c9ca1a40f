import { expect, test } from 'vitest'
import { ageText, amountText, moneyText, packText } from '../../../src/ui/ledger/words'

// Thin spaces part thousands and go before units.
test.each([
  [123_450, 'EUR', 0, '€1\u2009234.50'],
  [1250, 'JPY', 0, '¥1\u2009250'],
  [1234, 'KWD', 0, 'KWD1.234'],
  [-5, 'GBP', 0, '−£0.05'],
  [187.669, 'EUR', 1, '€1.877'],
])('%d minor units of %s are written as %s', (minor, currency, finer, text) => {
  expect(moneyText(minor, currency, finer)).toBe(text)
})

test.each([
  [950, false, '950\u2009g'],
  [4580, false, '4.58\u2009kg'],
  [25_000, false, '25.0\u2009kg'],
  [1, true, '1 piece'],
  [250, true, '250 pieces'],
])('an amount of %d is told as %s', (amount, byPiece, text) => {
  expect(amountText(amount, byPiece)).toBe(text)
})

test('packs are told by size and unit', () => {
  expect(packText({ size: 5, unit: 'l' })).toBe('5\u2009l')
  expect(packText({ size: 0.25, unit: 'kg' })).toBe('0.25\u2009kg')
  expect(packText({ size: 500, unit: 'piece' })).toBe('500 pieces')
})

test('old prices ask to be asked anew', () => {
  expect(ageText({ days: 0, age: 'fresh' })).toBe('today')
  expect(ageText({ days: 1, age: 'fresh' })).toBe('1 day')
  expect(ageText({ days: 400, age: 'old' })).toBe('400 days, ask anew')
})
