import { expect, test } from 'vitest'
import { gaugeOf, shortfall, type Steps, toStep } from '../../src/charts/gauge'

const POINTS: Steps = {
  tick: 5,
  key: 1,
  fine: 0.1,
  page: 5,
  drag: 0.5,
  decimals: 1,
  endDecimals: 0,
}

/** 14 px stay free at each end of a gauge for a flag that points outward, so 328 px show 300. */
const WIDTH_PX = 328

test('a gauge runs from the shelf’s least to its most', () => {
  const { x } = gaugeOf({ min: 20, max: 50 }, {}, POINTS, WIDTH_PX)
  // By hand: 300 px for 30 points are 10 px a point, the first one 14 px from the left.
  expect(x(20)).toBeCloseTo(14)
  expect(x(38)).toBeCloseTo(14 + 180)
  expect(x(50)).toBeCloseTo(314)
  expect(x.invert(214)).toBeCloseTo(40)
})

test('a gauge is widened to show a wish beyond the shelf on either side', () => {
  const { x } = gaugeOf({ min: 20, max: 50 }, { min: 10, max: 70 }, POINTS, WIDTH_PX)
  // By hand: 300 px for 60 points are 5 px a point.
  expect(x(10)).toBeCloseTo(14)
  expect(x(20)).toBeCloseTo(64)
  expect(x(70)).toBeCloseTo(314)
})

test('ticks stand at whole ties inside the shelf’s span and not beyond it', () => {
  const { ticks } = gaugeOf({ min: 17.4, max: 41 }, { max: 60 }, POINTS, WIDTH_PX)
  expect(ticks).toEqual([20, 25, 30, 35, 40])
})

test('ticks at the very ends of the shelf’s span are kept', () => {
  expect(gaugeOf({ min: 20, max: 30 }, {}, POINTS, WIDTH_PX).ticks).toEqual([20, 25, 30])
})

test('a shelf of one oil has its only value in the middle of a span of two ties', () => {
  const { x, ticks } = gaugeOf({ min: 30, max: 30 }, {}, POINTS, WIDTH_PX)
  expect(x.domain()).toEqual([25, 35])
  expect(x(30)).toBeCloseTo(WIDTH_PX / 2)
  expect(ticks).toEqual([30])
})

test.each([
  [38.24, 0.5, 1, 38],
  [38.25, 0.5, 1, 38.5],
  [38.26, 0.1, 1, 38.3],
  [5.62, 0.05, 2, 5.6],
  [5.63, 0.05, 2, 5.65],
  [-0.26, 0.5, 1, -0.5],
  // By hand: 3 * 0.1 is 0.30000000000000004 in binary.
  [0.29, 0.1, 1, 0.3],
])('%d to steps of %d is %d decimals of %d', (value, step, decimals, rounded) => {
  expect(toStep(value, step, decimals)).toBe(rounded)
})

test('nothing falls short where what is asked and what is in reach overlap or touch', () => {
  const none = { from: 0, to: 0, by: 0 }
  expect(shortfall({ min: 36, max: 43 }, { min: 38, max: 44 })).toEqual(none)
  expect(shortfall({ min: 36, max: 43 }, { min: 43 })).toEqual(none)
  expect(shortfall({ min: 36, max: 43 }, { max: 36 })).toEqual(none)
  expect(shortfall({ min: 36, max: 43 }, {})).toEqual(none)
})

test('a floor over the reach falls short from the reach’s most up to the floor', () => {
  expect(shortfall({ min: 36, max: 43 }, { min: 46, max: 48 })).toEqual({ from: 43, to: 46, by: 3 })
})

test('a ceiling under the reach falls short from the ceiling up to the reach’s least', () => {
  expect(shortfall({ min: 36, max: 43 }, { max: 30.5 })).toEqual({ from: 30.5, to: 36, by: 5.5 })
})
