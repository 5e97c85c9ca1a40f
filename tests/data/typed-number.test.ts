import { expect, test } from 'vitest'
import { readPlain } from '../../src/data/plain-number'
import { readTyped } from '../../src/data/typed-number'

test.each([
  ['5', 5],
  ['5.5', 5.5],
  ['5,5', 5.5],
  ['.5', 0.5],
  ['5.', 5],
  ['+5', 5],
  ['-3', -3],
  ['−3', -3],
  ['  38 ', 38],
  ['5 000', 5000],
  ['5\u2009000', 5000],
  ["5'000", 5000],
  ['1 000 000', 1_000_000],
  ['0,125', 0.125],
  ['1,2500', 1.25],
  ['1.234,50', 1234.5],
  ['1,234.50', 1234.5],
  ['1.234.567,5', 1_234_567.5],
  ['３８', 38],
  ['３８．５', 38.5],
])('"%s" is read at once as %d', (text, value) => {
  expect(readPlain(text)).toEqual({ status: 'number', value })
})

test.each(['', '   ', '\u2009'])('"%s" is read as empty', (text) => {
  expect(readPlain(text)).toEqual({ status: 'empty' })
})

test.each([
  '--',
  '-',
  '5,,5',
  '5..5',
  '5 5',
  '1 2000',
  'Infinity',
  'NaN',
  '0x10',
  '1e3',
  '2 *',
  '٣',
  '🧼',
])('"%s" is no plain number', (text) => {
  expect(readPlain(text).status).toBe('invalid')
})

test.each([
  ['1,250', '1,250 can be read two ways. Write 1250 or 1.25'],
  ['5,000', '5,000 can be read two ways. Write 5000 or 5'],
  ['2 * 1,250 g', '1,250 can be read two ways. Write 1250 or 1.25'],
  ['1,000,000', '1,000,000 can be read two ways. Write 1000000'],
])('"%s" is sent back, for its comma may part thousands or decimals', async (text, message) => {
  expect(await readTyped(text, { unit: 'g' })).toEqual({ status: 'invalid', message })
})

test('a plain number keeps its value whatever the unit of the field', async () => {
  expect(await readTyped('5,5', { unit: 'g' })).toMatchObject({ status: 'number', value: 5.5 })
  expect(await readTyped('5,5')).toMatchObject({ status: 'number', value: 5.5 })
})

test.each(['5 %', '5%', ' 5,0 % '])('"%s" is 5 in a field in percent', (text) => {
  expect(readPlain(text, '%')).toEqual({ status: 'number', value: 5 })
})

test('a percent sign is no weight and no price, and one is enough', async () => {
  expect((await readTyped('5 %', { unit: 'g' })).status).toBe('invalid')
  expect((await readTyped('5 %', { currency: 'EUR' })).status).toBe('invalid')
  expect((await readTyped('5 % %', { unit: '%' })).status).toBe('invalid')
})

test('grouped thousands may stand in a quantity', async () => {
  expect(await readTyped('5 000 g + 1 kg', { unit: 'g' })).toEqual({
    status: 'number',
    value: 6000,
    understood: '6000 g, added up',
  })
})
