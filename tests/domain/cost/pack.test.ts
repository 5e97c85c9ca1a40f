import { expect, test } from 'vitest'
import { packGrams, type PackUnit, pricePerKgOfPack } from '../../../src/domain/cost/pack'

test.each<[number, PackUnit, number, number]>([
  // By hand: 62 / 25; 9 / 0.5; 20 / (4 × 0.45359237); 4.5 / (16 × 0.028349523125).
  [25, 'kg', 62, 2.48],
  [500, 'g', 9, 18],
  [4, 'lb', 20, 11.0231],
  [16, 'oz', 4.5, 9.9208],
])('a pack of %d %s at %d comes to its price per kg', (size, unit, price, perKg) => {
  expect(pricePerKgOfPack({ size, unit, price }, undefined)).toBeCloseTo(perKg, 4)
})

test.each<[number, PackUnit]>([
  [5, 'l'],
  [5000, 'ml'],
])('a pack of %d %s weighs by its density', (size, unit) => {
  // By hand: 5 l × 0.912 kg/l = 4.56 kg; 41.04 / 4.56 = 9.
  expect(packGrams({ size, unit }, 0.912)).toBeCloseTo(4560, 9)
  expect(pricePerKgOfPack({ size, unit, price: 41.04 }, 0.912)).toBeCloseTo(9, 9)
})

test.each([
  ['a volume of an oil without a density', { size: 5, unit: 'l', price: 41 }],
  ['a pack without a size', { unit: 'kg', price: 41 }],
  ['a pack without a price', { size: 25, unit: 'kg' }],
  ['an empty pack', { size: 0, unit: 'kg', price: 41 }],
  ['a pack below nothing', { size: -2, unit: 'kg', price: 41 }],
] as const)('%s has no price per kg', (_, pack) => {
  expect(pricePerKgOfPack(pack, undefined)).toBeUndefined()
})

test('a pack that costs nothing is free per kg too', () => {
  expect(pricePerKgOfPack({ size: 2, unit: 'kg', price: 0 }, undefined)).toBe(0)
})
