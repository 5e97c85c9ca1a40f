import { describe, expect, test } from 'vitest'
import {
  decimalsOf,
  roundedDown,
  roundedToNearest,
  roundedUp,
} from '../../../../src/domain/batch/weigh/rounding'

describe('a weight on a scale', () => {
  test.for([
    // weight, step, nearest, down, up
    [142.4, 1, 142, 142, 143],
    [142.5, 1, 143, 142, 143],
    [142.66, 0.1, 142.7, 142.6, 142.7],
    [142.66, 0.05, 142.65, 142.65, 142.7],
    [142.66, 5, 145, 140, 145],
    [142.66, 0.5, 142.5, 142.5, 143],
    [0.4, 1, 0, 0, 1],
    [142, 1, 142, 142, 142],
  ] as const)('of %f g in steps of %f g', ([grams, step, nearest, down, up]) => {
    expect(roundedToNearest(grams, step)).toBe(nearest)
    expect(roundedDown(grams, step)).toBe(down)
    expect(roundedUp(grams, step)).toBe(up)
  })

  test('stays as it is without a scale', () => {
    expect(roundedDown(142.123456789, undefined)).toBe(142.123456789)
  })

  test('at a mark stays there, though floating point is a hair beside it', () => {
    expect(roundedDown(141.99999999999997, 1)).toBe(142)
    expect(roundedUp(142.00000000000003, 1)).toBe(142)
    expect(roundedDown(0.1 + 0.2, 0.1)).toBe(0.3)
    expect(roundedUp(0.1 + 0.2, 0.1)).toBe(0.3)
    expect(roundedDown(0.7, 0.1)).toBe(0.7)
    expect(roundedDown(0.3, 0.1)).toBe(0.3)
  })

  test('a thousandth of a step beside a mark does not stand at it', () => {
    expect(roundedDown(141.999, 1)).toBe(141)
    expect(roundedUp(142.001, 1)).toBe(143)
  })

  test('is written with no more decimals than its step', () => {
    for (let k = 1; k < 3_000; k += 7) {
      const shown = String(roundedToNearest(k * 0.0537, 0.05))
      expect(shown).toMatch(/^\d+(\.\d{1,2})?$/u)
    }
  })
})

test.for([
  [1, 0],
  [5, 0],
  [0.5, 1],
  [0.1, 1],
  [0.05, 2],
  [0.25, 2],
  [0.001, 3],
  [1e-7, 7],
  [100, 0],
  [2.5, 1],
  [1e21, 0],
] as const)('a step of %f is written with %i decimals', ([step, decimals]) => {
  expect(decimalsOf(step)).toBe(decimals)
})
