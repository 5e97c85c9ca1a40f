import { describe, expect, test } from 'vitest'
import { library } from '../../../src/data/library'
import {
  barDistance,
  differAtAll,
  differences,
  shareChanges,
  standingOf,
} from '../../../src/domain/blend/compare'

describe('a difference', () => {
  test.each([
    [0, 'tie'],
    [4.9, 'tie'],
    [-4.9, 'tie'],
    [5, 'more'],
    [-5, 'less'],
    [14.4, 'more'],
  ] as const)('of %d points where 5 can be told is %s', (by, standing) => {
    expect(standingOf(by, 5)).toBe(standing)
  })

  test('that reaches the tie but for binary noise counts as told', () => {
    // 0.3 − 0.25 is 0.04999999999999999 in binary.
    expect(standingOf(0.3 - 0.25, 0.05)).toBe('more')
  })

  test('is taken of every measure that both sides have', () => {
    const told = differences(
      library.measures,
      { hardness: 30, lather: 40 },
      { hardness: 38.7, cost: 3.6 },
    )
    expect(told).toEqual([
      { measure: 'hardness', value: 30, reference: 38.7, by: 30 - 38.7, standing: 'less' },
    ])
  })
})

describe('whether a row differs at all', () => {
  test('depends on the span of all columns, not on their ties with the reference', () => {
    // 46 and 54 tie with 50 and yet lie 8 apart.
    expect(differAtAll([50, 46, 54], 5)).toBe(true)
    expect(differAtAll([50, 48, 52], 5)).toBe(false)
    expect(differAtAll([50], 5)).toBe(false)
  })
})

describe('what changes in the oils', () => {
  test('names what left, what came and what moved, the largest change first', () => {
    const from = { palm: 34, coconut: 28, olive: 22, rapeseed: 16 }
    const to = { coconut: 33.3, shea: 35, olive: 15, sunflower: 4, rice: 12.7 }
    expect(shareChanges(from, to).map(({ oil, kind }) => `${oil} ${kind}`)).toEqual([
      'shea came',
      'palm left',
      'rapeseed left',
      'rice came',
      'olive less',
      'coconut more',
      'sunflower came',
    ])
  })

  test('leaves out what rounds to nothing', () => {
    expect(shareChanges({ a: 50, b: 50 }, { a: 50.4, b: 49.6 })).toEqual([])
  })
})

describe('the distance of two bars', () => {
  test('is the sum of differences in ties, cost left out', () => {
    // By hand: 10 / 5 + 2.5 / 5 = 2.5.
    const distance = barDistance(
      library.measures,
      { hardness: 50, lather: 32.5, cost: 9 },
      { hardness: 40, lather: 35, cost: 4 },
    )
    expect(distance).toBeCloseTo(2.5, 12)
  })

  test('is 0 from a bar to itself and the same in both directions', () => {
    const [a, b] = [
      { hardness: 50, wear: 40 },
      { hardness: 41, wear: 47 },
    ]
    expect(barDistance(library.measures, a, a)).toBe(0)
    expect(barDistance(library.measures, a, b)).toBe(barDistance(library.measures, b, a))
  })
})
