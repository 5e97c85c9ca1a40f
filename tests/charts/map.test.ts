import { expect, test } from 'vitest'
import { isInside, mapScales, nearestInside, pathThrough } from '../../src/charts/map'

/** A box of 120 by 110 px whose drawing is 100 by 100 px, its top left at 10, 5. */
const MARGINS = { top: 5, right: 10, bottom: 5, left: 10 }
const WIDTH_PX = 120
const HEIGHT_PX = 110

const corner = (x: number, y: number) => ({ x, y, blend: {} })

/** Counter-clockwise as the domain gives it. */
const SQUARE = [corner(0, 0), corner(10, 0), corner(10, 10), corner(0, 10)]

/** Ten px a unit both ways: x = 10 + 10 x, y = 105 - 10 y. */
const scales = mapScales(SQUARE, [0, 0], WIDTH_PX, HEIGHT_PX, MARGINS, 0)

test('a map shows its places from edge to edge where no paper is wanted around them', () => {
  expect([scales.x(0), scales.x(10)]).toEqual([10, 110])
  expect([scales.y(0), scales.y(10)]).toEqual([105, 5])
})

test('a map leaves 8 % of bare paper on each side', () => {
  const { x, y } = mapScales(SQUARE, [0, 0], WIDTH_PX, HEIGHT_PX, MARGINS)
  expect(x.domain()).toEqual([-0.8, 10.8])
  expect(y.domain()).toEqual([-0.8, 10.8])
})

test('a single place stands in the middle of a window of the least size', () => {
  const { x, y } = mapScales([{ x: 38, y: 35 }], [5, 2], WIDTH_PX, HEIGHT_PX, MARGINS)
  expect(x.domain()).toEqual([35.5, 40.5])
  expect(y.domain()).toEqual([34, 36])
  expect([x(38), y(35)]).toEqual([60, 55])
})

test('a path runs through places in px, open or closed', () => {
  expect(pathThrough(SQUARE.slice(0, 3), scales)).toBe('M10,105L110,105L110,5')
  expect(pathThrough(SQUARE.slice(0, 3), scales, true)).toBe('M10,105L110,105L110,5Z')
  expect(pathThrough([{ x: 1 / 3, y: 0 }], scales)).toBe('M13.33,105Z')
})

test('a path through nothing is empty', () => {
  expect(pathThrough([], scales)).toBe('')
  expect(pathThrough([], scales, true)).toBe('')
})

test('a place is inside a region, or it is not', () => {
  expect(isInside({ x: 5, y: 5 }, SQUARE)).toBe(true)
  expect(isInside({ x: 11, y: 5 }, SQUARE)).toBe(false)
  expect(isInside({ x: 5, y: -1 }, SQUARE)).toBe(false)
})

test('a region of less than three corners holds nothing', () => {
  expect(isInside({ x: 5, y: 5 }, [])).toBe(false)
  expect(isInside({ x: 0, y: 0 }, SQUARE.slice(0, 1))).toBe(false)
  expect(isInside({ x: 5, y: 0 }, SQUARE.slice(0, 2))).toBe(false)
})

test('a place inside a region is its own nearest', () => {
  expect(nearestInside({ x: 3, y: 4 }, SQUARE, scales)).toEqual({ x: 3, y: 4 })
})

test('the nearest to a place beside an edge is its foot on that edge', () => {
  expect(nearestInside({ x: 14, y: 4 }, SQUARE, scales)).toEqual({ x: 10, y: 4 })
  expect(nearestInside({ x: 6, y: -20 }, SQUARE, scales)).toEqual({ x: 6, y: 0 })
})

test('the nearest to a place beyond a corner is the corner', () => {
  expect(nearestInside({ x: 30, y: 30 }, SQUARE, scales)).toEqual({ x: 10, y: 10 })
})

test('nearness is what the eye sees, in px and not in units', () => {
  // An edge from (0, 0) to (10, 10) units, drawn 100 px wide and 10 px high; the place is at (10, 0).
  // By hand in px: edge along (100, -10), place at (100, 0) from its start: part = 10000 / 10100.
  const flat = mapScales(SQUARE, [0, 0], WIDTH_PX, 20, MARGINS, 0)
  const edge = [corner(0, 0), corner(10, 10)]
  const nearest = nearestInside({ x: 10, y: 0 }, edge, flat)
  expect(nearest?.x).toBeCloseTo((10 * 10000) / 10100, 9)
  expect(nearest?.y).toBeCloseTo((10 * 10000) / 10100, 9)
})

test('a region of one corner has that corner nearest, and one of none has nothing', () => {
  expect(nearestInside({ x: 3, y: 4 }, [corner(7, 8)], scales)).toEqual({ x: 7, y: 8 })
  expect(nearestInside({ x: 3, y: 4 }, [], scales)).toBeUndefined()
})
