import { expect, test } from 'vitest'
import { readQuantity } from '../../src/data/typed-quantity'

/**
 * The international pound is 0.45359237 kg exactly, and 16 ounces make one (International Yard and
 * Pound Agreement, 1959).
 */
const GRAMS_PER_POUND = 453.59237

test.each([
  ['1.5 kg', 1500],
  ['1,5 kg', 1500],
  ['500 mg', 0.5],
  ['1 lb', GRAMS_PER_POUND],
  ['1 lb 4 oz', 1.25 * GRAMS_PER_POUND],
  ['12 oz', 0.75 * GRAMS_PER_POUND],
  ['2 * 450 g', 900],
  ['2 kg + 1 lb', 2000 + GRAMS_PER_POUND],
  ['3 x 450 g', 1350],
  ['3 × 450 g + 1 kg', 2350],
  ['(1 kg + 500 g) * 2', 3000],
  ['2 * 450', 900],
])('"%s" comes to %d g', (text, grams) => {
  const read = readQuantity(text, 'g')
  expect(read).toMatchObject({ status: 'number', value: expect.closeTo(grams, 9) as number })
})

test('a sum without units is worked out in a field without a unit', () => {
  expect(readQuantity('(1 + 2) * 3', undefined)).toEqual({
    status: 'number',
    value: 9,
    understood: '9, added up',
  })
})

test.each([
  '1e999',
  '1 / 0',
  '6 / 2',
  '3 kg - 500 g',
  '--',
  'kg',
  'g',
  'e',
  'pi',
  '5 m',
  '100 ml',
  '2 g + 3',
  'f(x) = 2',
])('"%s" is no weight, and the message shows what would be', (text) => {
  const message = 'Not a number. Try 5.5 or 5.5 g'
  expect(readQuantity(text, 'g')).toEqual({ status: 'invalid', message })
})

test.each(['5 kg', '5 %', '7 % 4', '[1, 2]', 'cos(1)', '"5"', '5; 6', '2^3', '5!', '🧼 5'])(
  '"%s" is no plain figure, and the message shows what would be',
  (text) => {
    const message = 'Not a number. Try 5.5'
    expect(readQuantity(text, undefined)).toEqual({ status: 'invalid', message })
  },
)
