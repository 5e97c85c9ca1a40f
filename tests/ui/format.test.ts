import { expect, test } from 'vitest'
import { library } from '../../src/data/library'
import { measureOf } from '../../src/domain/blend/library'
import {
  blendInWords,
  currencySign,
  difference,
  measureDecimals,
  measureValue,
  money,
  number,
  withUnit,
} from '../../src/ui/words/format'

const THIN = '\u2009'

test.each([
  [0, 0, '0'],
  [5, 1, '5.0'],
  [999, 0, '999'],
  [5000, 0, `5${THIN}000`],
  [1234567.891, 2, `1${THIN}234${THIN}567.89`],
  [-3, 1, '−3.0'],
  [-1405, 0, `−1${THIN}405`],
  [0.00001, 2, '0.00'],
  [-0.04, 1, '0.0'],
  [-0, 0, '0'],
])('%d with %d decimals is written "%s"', (value, decimals, text) => {
  expect(number(value, decimals)).toBe(text)
})

test.each([
  [2.24, 1, '+2.2'],
  [-3.9, 1, '−3.9'],
  [0, 1, '0.0'],
  [0.04, 1, '0.0'],
  [-0.04, 1, '0.0'],
])('a difference of %d is written with its sign', (value, decimals, text) => {
  expect(difference(value, decimals)).toBe(text)
})

test('a unit stands after a thin space', () => {
  expect(withUnit(28.2, 1, '%')).toBe(`28.2${THIN}%`)
  expect(withUnit(5000, 0, 'g')).toBe(`5${THIN}000${THIN}g`)
})

test('money has its sign in front, two decimals and a true minus before all', () => {
  expect(money(4.5678, 'EUR')).toBe('€4.57')
  expect(money(-0.69, 'EUR')).toBe('−€0.69')
  expect(money(1234.5, 'USD')).toBe(`$1${THIN}234.50`)
  expect(money(2, 'CHF')).toBe('CHF2.00')
  expect(money(-0.001, 'EUR')).toBe('€0.00')
})

test('a currency is shown by its narrow sign', () => {
  expect(currencySign('GBP')).toBe('£')
  expect(currencySign('JPY')).toBe('¥')
})

test('points have one decimal, money two', () => {
  const hardness = measureOf(library, 'hardness')
  const cost = measureOf(library, 'cost')
  expect([measureDecimals(hardness), measureDecimals(cost)]).toEqual([1, 2])
  expect(measureValue(hardness, 38.04, 'EUR')).toBe('38.0')
  expect(measureValue(cost, 4.567, 'EUR')).toBe('€4.57')
})

test('a blend is said with its largest share first and without what it lacks', () => {
  const blend = { coconut: 28.24, olive: 71.76, castor: 0 }
  expect(blendInWords(blend, library.oils)).toBe(`Olive 71.8${THIN}%, Coconut 28.2${THIN}%`)
})
