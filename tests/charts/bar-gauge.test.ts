import { describe, expect, test } from 'vitest'
import { barScale, placeMarks } from '../../src/charts/bar-gauge'

const SCALE = barScale(3, 63, 5, 301)
const mark = (letter: string, value: number, first = false) => ({ letter, value, first })

test('a gauge has a tick at every whole step between its ends', () => {
  expect(SCALE.ticks).toEqual([5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60])
  expect([SCALE.x(3), SCALE.x(63)]).toEqual([0.5, 300.5])
})

describe('the letters of bars on a gauge', () => {
  test('stand under their values where there is room', () => {
    const placed = placeMarks([mark('T', 43), mark('O', 13)], 20, SCALE)
    expect(placed.map(({ letter, letterAt, at }) => [letter, letterAt - at])).toEqual([
      ['O', 0],
      ['T', 0],
    ])
  })

  test('stand at least 11 px apart, in the order of their values, around where they belong', () => {
    const close = [30, 30.5, 31, 31.2].map((value, at) => mark('ABCD'[at] ?? '', value))
    const placed = placeMarks(close, 30, SCALE)
    const gaps = placed.slice(1).map((one, at) => one.letterAt - (placed[at]?.letterAt ?? 0))
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(11 - 1e-9)
    const mean = (of: (one: (typeof placed)[number]) => number) =>
      placed.reduce((sum, one) => sum + of(one), 0) / placed.length
    expect(Math.abs(mean((one) => one.letterAt) - mean((one) => one.at))).toBeLessThan(11)
  })

  test('stay on the line at either end', () => {
    for (const end of [3, 63]) {
      const all = [0, 0, 0].map((_, at) => mark('ABC'[at] ?? '', end))
      for (const { letterAt } of placeMarks(all, end, SCALE)) {
        expect(letterAt).toBeGreaterThanOrEqual(0.5)
        expect(letterAt).toBeLessThanOrEqual(300.5)
      }
    }
  })

  test('are five at most: the first ones and the nearest', () => {
    const many = [10, 20, 30, 40, 50, 60].map((value, at) => mark('ABCDEF'[at] ?? '', value))
    const shown = placeMarks([...many, mark('K', 62, true)], 12, SCALE)
    expect(shown.map(({ letter }) => letter).join('')).toBe('ABCDK')
    expect(placeMarks([mark('X', 99)], 12, SCALE)).toEqual([])
  })
})
