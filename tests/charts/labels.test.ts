import { expect, test } from 'vitest'
import {
  boxAround,
  boxesAlong,
  type Label,
  overlapArea,
  placeLabels,
} from '../../src/charts/labels'

const FRAME = { left: 0, right: 200, top: 0, bottom: 100 }

const label = (change: Partial<Label> = {}): Label => ({
  id: 'a',
  x: 100,
  y: 50,
  width: 40,
  lines: 1,
  gap: 10,
  sides: ['right', 'left', 'below right', 'above left'],
  ...change,
})

test('boxes share the area where they overlap, and none where they only touch', () => {
  const box = { left: 0, right: 10, top: 0, bottom: 10 }
  expect(overlapArea(box, { left: 6, right: 20, top: -5, bottom: 5 })).toBe(20)
  expect(overlapArea(box, { left: 10, right: 20, top: 0, bottom: 10 })).toBe(0)
  expect(overlapArea(box, { left: 50, right: 60, top: 50, bottom: 60 })).toBe(0)
})

test('a label with all the room stands on the first side it may', () => {
  // By hand: 10 px beside the spot, a line of 14 px about its height, letters 11 px below its top.
  expect(placeLabels([label()], [], FRAME).get('a')).toEqual({
    x: 110,
    y: 54,
    anchor: 'start',
    box: { left: 110, right: 150, top: 43, bottom: 57 },
  })
})

test('a label goes to the other side of what is taken', () => {
  const taken = [boxAround(125, 50, 20, 20)]
  const placed = placeLabels([label()], taken, FRAME).get('a')
  expect(placed?.anchor).toBe('end')
  expect(placed?.x).toBe(90)
})

test('a label rather lies over much that is light than over little that is heavy', () => {
  const light = boxAround(130, 50, 40, 14)
  const heavy = { ...boxAround(70, 50, 4, 4), weight: 100 }
  const sides = ['left', 'right'] as const
  expect(placeLabels([label({ sides })], [light], FRAME).get('a')?.anchor).toBe('end')
  expect(placeLabels([label({ sides })], [light, heavy], FRAME).get('a')?.anchor).toBe('start')
})

test('a label stays inside the frame, even over something else', () => {
  const taken = [boxAround(165, 50, 40, 10)]
  const placed = placeLabels([label({ x: 195, sides: ['right', 'left'] })], taken, FRAME).get('a')
  expect(placed?.box).toEqual({ left: 145, right: 185, top: 43, bottom: 57 })
})

test('a later label keeps off an earlier one', () => {
  const placed = placeLabels([label(), label({ id: 'b', x: 102 })], [], FRAME)
  const [a, b] = [placed.get('a')?.box, placed.get('b')?.box]
  if (!a || !b) throw new Error('Both labels are placed')
  expect(overlapArea(a, b)).toBe(0)
})

test('words below and above keep half their gap from the spot', () => {
  const below = placeLabels([label({ sides: ['below left'], lines: 2 })], [], FRAME).get('a')
  expect(below?.box).toEqual({ left: 50, right: 90, top: 55, bottom: 83 })
  const above = placeLabels([label({ sides: ['above right'] })], [], FRAME).get('a')
  expect(above?.box).toEqual({ left: 110, right: 150, top: 31, bottom: 45 })
})

test('boxes along a line lie no further apart than their size', () => {
  const boxes = boxesAlong(
    [
      { x: 0, y: 0 },
      { x: 30, y: 40 },
    ],
    10,
  )
  // By hand: 50 px in steps of 10 are six boxes.
  expect(boxes).toHaveLength(6)
  expect(boxes.at(0)).toEqual(boxAround(0, 0, 10, 10))
  expect(boxes.at(-1)).toEqual(boxAround(30, 40, 10, 10))
  expect(boxesAlong([{ x: 1, y: 1 }], 10)).toEqual([])
})
