import { expect, test } from 'vitest'
import { mapScales } from '../../src/charts/map'
import { cornersOf, extentOf, isInFrame, mapFrame, sightsOf } from '../../src/charts/map-frame'

test('a map under 500 px is lower and has no room above it for words', () => {
  expect(mapFrame(499)).toMatchObject({ narrow: true, height: 240, top: 12, right: 485 })
  expect(mapFrame(500)).toMatchObject({ narrow: false, height: 436, top: 36, right: 486 })
})

test('a point on the edge of the frame is in it, one beside it is not', () => {
  const frame = mapFrame(700)
  expect(isInFrame({ x: frame.left, y: frame.bottom }, frame)).toBe(true)
  expect(isInFrame({ x: frame.left - 0.1, y: frame.bottom }, frame)).toBe(false)
  expect(isInFrame({ x: frame.left, y: frame.top - 0.1 }, frame)).toBe(false)
})

test('a map shows its region, the wishes beside it and the blend in hand', () => {
  const region = [{ x: 10, y: 20 }]
  expect(sightsOf(region, { x: { min: 40 }, y: { max: 5 } }, { x: 1, y: 2 })).toEqual([
    { x: 10, y: 20 },
    { x: 40, y: 20 },
    { x: 10, y: 5 },
    { x: 1, y: 2 },
  ])
  expect(sightsOf([], { x: { min: 40 }, y: {} }, undefined)).toEqual([])
})

test('what a frame shows of a part of the map is that part', () => {
  const frame = mapFrame(700)
  const [xs, ys] = [
    { min: 30, max: 50 },
    { min: 10, max: 20 },
  ]
  const scales = mapScales(cornersOf(xs, ys), [0, 0], frame.width, frame.height, frame.margins, 0)
  expect(extentOf(scales, frame)).toEqual({ x: xs, y: ys })
})
