import { expect, test } from 'vitest'
import { coverOf, FULL_INK, LineInk } from '../../src/charts/line-ink'

const SIZE = 20

/** One line of two heights, or more lines one after the other, over axes at 0 and 19. */
function inkOf(...heights: number[]): LineInk {
  return new LineInk(SIZE, SIZE, Float32Array.from(heights), [0, SIZE - 1])
}

const total = ({ ink }: LineInk) => ink.reduce((sum, one) => sum + one, 0)
const at = ({ ink }: LineInk, x: number, y: number) => ink[y * SIZE + x]

test('a level line on a row of pixels covers that row alone', () => {
  const line = inkOf(5, 5)
  line.put(0, 1)
  for (let x = 0; x < SIZE - 1; x++) {
    expect(at(line, x, 5)).toBe(FULL_INK)
    expect(at(line, x, 6)).toBe(0)
  }
  expect(total(line)).toBe((SIZE - 1) * FULL_INK)
})

test('a line between two rows shares its ink between them', () => {
  const line = inkOf(5.25, 5.25)
  line.put(0, 1)
  expect(at(line, 3, 5)).toBe(0.75 * FULL_INK)
  expect(at(line, 3, 6)).toBe(0.25 * FULL_INK)
})

test('a steep line has ink in every row it passes', () => {
  const line = new LineInk(SIZE, SIZE, Float32Array.from([2, 17]), [4, 6])
  line.put(0, 1)
  for (let y = 2; y < 17; y++)
    expect(line.ink.subarray(y * SIZE, (y + 1) * SIZE).reduce((a, b) => a + b)).toBe(FULL_INK)
})

test('what is taken away leaves nothing, whatever was drawn between', () => {
  // The last one lies where half an ink has to be rounded.
  const lines = inkOf(1.3, 17.9, 12.4, 3.3, 8.1, 8.7, 5 + 1 / 512, 5 + 1 / 512)
  for (const line of [0, 1, 2, 3]) lines.put(line, 1)
  const two = Int32Array.from(lines.ink)
  lines.put(1, -1)
  expect(lines.ink).not.toEqual(two)
  lines.put(0, -1)
  lines.put(2, -1)
  lines.put(3, -1)
  expect(lines.ink.every((ink) => ink === 0)).toBe(true)
})

test('what lies outside the picture is left out', () => {
  const line = inkOf(-8, 30)
  line.put(0, 1)
  expect(total(line)).toBeGreaterThan(0)
  expect(line.ink.every((ink) => ink >= 0)).toBe(true)
})

test('cover grows with the lines and never passes all of it', () => {
  expect(coverOf(FULL_INK, 1)).toBe(1)
  // Two of a half each let a quarter through.
  expect(coverOf(2 * FULL_INK, 0.5)).toBeCloseTo(0.75, 12)
  expect(coverOf(1000 * FULL_INK, 0.03)).toBeLessThanOrEqual(1)
  expect(coverOf(0, 0.5)).toBe(0)
})
