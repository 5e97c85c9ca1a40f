import { describe, expect, test } from 'vitest'
import {
  asInteger,
  exactDot,
  GRID,
  onGrid,
  orthogonalTo,
} from '../../../../src/domain/lp/pareto/exact'
import { Random } from '../../../generator/random'

describe('orthogonalTo', () => {
  test('is the cross product in three dimensions', () => {
    const cross = orthogonalTo([
      [1n, 2n, 3n],
      [4n, 5n, 6n],
    ])
    expect(cross).toEqual([-3n, 6n, -3n])
  })

  test('turns a vector of the plane by a right angle', () => {
    expect(orthogonalTo([[3n, 5n]])).toEqual([5n, -3n])
  })

  test('is orthogonal to its rows to the last digit, and as long as their volume', () => {
    const random = new Random(5)
    for (let round = 0; round < 50; round++) {
      const rows = Array.from({ length: 3 }, () =>
        Array.from({ length: 4 }, () => BigInt(random.int(-(2 ** 40), 2 ** 40))),
      )
      const normal = orthogonalTo(rows)
      expect(rows.map((row) => exactDot(row, normal))).toEqual([0n, 0n, 0n])
      // Gram's determinant is the square of the volume.
      const gram = rows.map((a) => rows.map((b) => exactDot(a, b)))
      expect(exactDot(normal, normal)).toBe(determinantOfThree(gram))
    }
  })

  test('is zero for rows that depend on one another', () => {
    const rows = [
      [1n, 2n, 3n, 4n],
      [0n, 1n, 1n, 1n],
      [2n, 5n, 7n, 9n],
    ]
    expect(orthogonalTo(rows)).toEqual([0n, 0n, 0n, 0n])
  })
})

test('coordinates on the grid are integers in units of it and as near as half a unit', () => {
  for (const one of [0, 1, -1, 1 / 3, -0.1, 1e-16, 123.456]) {
    expect(Math.abs(onGrid(one) - one)).toBeLessThanOrEqual(GRID / 2)
    expect(Number(asInteger(onGrid(one))) * GRID).toBe(onGrid(one))
  }
})

/** The rule of Sarrus. */
function determinantOfThree([a = [], b = [], c = []]: readonly (readonly bigint[])[]): bigint {
  const [a0 = 0n, a1 = 0n, a2 = 0n] = a
  const [b0 = 0n, b1 = 0n, b2 = 0n] = b
  const [c0 = 0n, c1 = 0n, c2 = 0n] = c
  return a0 * b1 * c2 + a1 * b2 * c0 + a2 * b0 * c1 - a2 * b1 * c0 - a1 * b0 * c2 - a0 * b2 * c1
}
