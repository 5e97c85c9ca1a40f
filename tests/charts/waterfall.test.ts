import { expect, test } from 'vitest'
import { waterfallDrawing } from '../../src/charts/waterfall'

const waterfall = {
  unit: 'bar',
  steps: [
    { what: 'oils', value: 30 },
    { what: 'labour', value: 50 },
    { what: 'packaging', value: 20 },
  ],
  total: 100,
} as const

test('every bar starts where the one before it ended, from 0 to the total', () => {
  const { bars, x } = waterfallDrawing(waterfall, 100, 600)
  // By hand: 5 px for each unit, from 100 px on.
  expect(bars.map(({ from, to }) => [from, to])).toEqual([
    [100, 250],
    [250, 500],
    [500, 600],
  ])
  expect(bars.map(({ sum, share }) => [sum, share])).toEqual([
    [30, 0.3],
    [80, 0.5],
    [100, 0.2],
  ])
  expect(x(100)).toBe(600)
})

test('a cost of nothing is drawn, as nothing', () => {
  const { bars, x } = waterfallDrawing({ unit: 'bar', steps: [], total: 0 }, 0, 300)
  expect(bars).toEqual([])
  expect(x(0)).toBe(0)
})
