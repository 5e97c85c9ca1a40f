import { pairs } from 'd3'
import { describe, expect, test } from 'vitest'
import { benchAxis, lettersThatFit, spreadLetters } from '../../src/charts/bench-axis'
import { Random } from '../generator/random'

describe('a shared axis', () => {
  const axis = benchAxis([38.7, 38, 43, 30], 38.7, 5, 296, 14)

  test('shows every value and the whole zone that ties with the reference', () => {
    expect(axis.tieZone).toEqual([33.7, 43.7])
    for (const value of [30, 43, 33.7, 43.7]) {
      expect(axis.x(value)).toBeGreaterThan(14)
      expect(axis.x(value)).toBeLessThan(296 - 14)
    }
  })

  test('has a tick for every tie', () => {
    expect(axis.ticks).toEqual([30, 35, 40, 45])
  })

  test('doubles the step where ticks a tie apart would crowd', () => {
    const { ticks } = benchAxis([10, 62], 30, 5, 296, 14)
    expect(ticks).toEqual([10, 20, 30, 40, 50, 60])
  })

  test('takes round figures where a tie is too fine to be a step, as of money', () => {
    const { ticks } = benchAxis([3.6, 4.89], 3.6, 0.05, 296, 14)
    expect(ticks.length).toBeGreaterThan(3)
    expect(ticks.length).toBeLessThan(12)
    for (const tick of ticks) expect(Math.abs(tick * 20 - Math.round(tick * 20))).toBeLessThan(1e-6)
  })

  test('has no tie zone where the reference has no value', () => {
    expect(benchAxis([3, 4], undefined, 0.05, 296, 14).tieZone).toBeUndefined()
  })

  test('is an axis even for a single bar', () => {
    const { x } = benchAxis([40], 40, 5, 296, 14)
    expect(x(40)).toBeCloseTo(148, 9)
  })
})

describe('letters on stems', () => {
  test('stand at their places where there is room', () => {
    expect(spreadLetters([20, 100, 60], 19, 10, 280)).toEqual([20, 100, 60])
  })

  test('share the push where two meet', () => {
    // By hand: 100 and 104 are 4 apart and need 19, so each gives way by 7.5.
    expect(spreadLetters([100, 104], 19, 10, 280)).toEqual([92.5, 111.5])
  })

  test('stay inside the bounds', () => {
    expect(spreadLetters([8, 9], 19, 10, 280)).toEqual([10, 29])
    expect(spreadLetters([281, 282], 19, 10, 280)).toEqual([261, 280])
  })

  test('never overlap, keep their order and their bounds, for random places', () => {
    const random = new Random(7)
    for (let round = 0; round < 200; round++) {
      const count = random.int(1, lettersThatFit(19, 10, 280))
      const places = Array.from({ length: count }, () => 10 + 270 * random.next() ** 2)
      const found = spreadLetters(places, 19, 10, 280)
      const sorted = found.toSorted((a, b) => a - b)
      for (const at of sorted) {
        expect(at).toBeGreaterThanOrEqual(10 - 1e-9)
        expect(at).toBeLessThanOrEqual(280 + 1e-9)
      }
      for (const [left, right] of pairs(sorted))
        expect(right - left).toBeGreaterThanOrEqual(19 - 1e-9)
      const order = (values: readonly number[]) =>
        values.map((_, index) => index).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0))
      expect(order(found)).toEqual(order(places))
    }
  })

  test('so many fit as their width leaves room for', () => {
    expect(lettersThatFit(19, 10, 29)).toBe(2)
    expect(lettersThatFit(19, 10, 28)).toBe(1)
  })
})
