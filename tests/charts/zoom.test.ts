import { expect, test } from 'vitest'
import { mapScales } from '../../src/charts/map'
import { panned, zoomed } from '../../src/charts/zoom'

const PART = { x: { min: 10, max: 30 }, y: { min: 0, max: 40 } }

test('a zoom by 2 about the middle shows the middle half of each side', () => {
  expect(zoomed(PART, 2, undefined)).toEqual({ x: { min: 15, max: 25 }, y: { min: 10, max: 30 } })
})

test('a zoom about a place keeps that place where it is', () => {
  // By hand: 5 of 20 from the left stays a quarter of the width; 10 of 40 a quarter of the height.
  expect(zoomed(PART, 2, { x: 15, y: 10 })).toEqual({
    x: { min: 12.5, max: 22.5 },
    y: { min: 5, max: 25 },
  })
})

test('a zoom out by half undoes a zoom in by 2', () => {
  const place = { x: 12, y: 33 }
  expect(zoomed(zoomed(PART, 2, place), 0.5, place)).toEqual(PART)
})

test('a drag to the right and down shows what lay to the left and above', () => {
  const margins = { top: 0, right: 0, bottom: 0, left: 0 }
  const corners = [
    { x: 10, y: 0 },
    { x: 30, y: 40 },
  ]
  const scales = mapScales(corners, [0, 0], 200, 400, margins, 0)
  // By hand: 10 px a unit both ways, so 20 px are 2 units.
  const { x, y } = panned(PART, 20, 20, scales)
  expect([x.min, x.max, y.min, y.max].map((value) => Number(value.toFixed(9)))).toEqual([
    8, 28, 2, 42,
  ])
})
