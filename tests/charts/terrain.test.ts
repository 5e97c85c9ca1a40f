import { expect, test } from 'vitest'
import { mapScales } from '../../src/charts/map'
import { type Band, terrainBands, terrainSteps } from '../../src/charts/terrain'
import type { Terrain } from '../../src/domain/optimise/map/terrain-linear'

const LAST = 20
const steps = Array.from({ length: LAST + 1 }, (_, index) => index)
const MARGINS = { top: 0, right: 0, bottom: 0, left: 0 }
const CORNERS = [
  { x: 0, y: 0 },
  { x: LAST, y: LAST },
]

/** 20 px a unit both ways. */
const scales = mapScales(CORNERS, [0, 0], 400, 400, MARGINS, 0)

function terrain(height: (x: number, y: number) => number | null): Terrain {
  const values = steps.map((y) => steps.map((x) => height(x, y)))
  return { axes: ['hardness', 'lather'], x: steps, y: steps, values }
}

const bandsOf = (land: Terrain): Band[] => terrainBands(terrainSteps(land), land, scales)

/** Least and most x of a path in px. */
function spanOf(path: string): [number, number] {
  const xs = [...path.matchAll(/[ML](-?[\d.]+),/gu)].map(([, x]) => Number(x))
  return [Math.min(...xs), Math.max(...xs)]
}

test('a slope to the right has a band from each step to the right edge', () => {
  const bands = bandsOf(terrain((x) => x))
  // 20 units in about 12 steps are steps of 2 (1, 2 and 5 times powers of 10 are round).
  expect(bands.map(({ value }) => value)).toEqual([0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20])
  for (const { value, area } of bands.slice(1, -1)) {
    const [left, right] = spanOf(area)
    expect(left).toBeCloseTo(20 * value, 6)
    expect(right).toBeGreaterThanOrEqual(400)
  }
})

test('every second step is heavy, and a long heavy line has a label that runs along it', () => {
  const bands = bandsOf(terrain((x) => x))
  expect(bands.filter(({ heavy }) => heavy).map(({ value }) => value)).toEqual([
    0, 4, 8, 12, 16, 20,
  ])
  const label = bands.find(({ value }) => value === 8)?.label
  expect(label?.x).toBeCloseTo(160, 6)
  expect(Math.abs(label?.angle ?? 0)).toBeCloseTo(90, 6)
  expect(bands.find(({ value }) => value === 6)?.label).toBeUndefined()
})

test('labels are never upside down', () => {
  const falling = bandsOf(terrain((x, y) => -x - y))
  const angles = falling.flatMap(({ label }) => (label ? [label.angle] : []))
  expect(angles.length).toBeGreaterThan(2)
  for (const angle of angles) expect(Math.abs(angle)).toBeLessThanOrEqual(90)
})

test('a slope goes on past the land’s edge, so that its lines reach the edge', () => {
  const right = bandsOf(terrain((x) => (x < 10 ? x : null)))
  // The land ends at 9; a band of 8 would end there too, were the slope not carried on.
  const [left, end] = spanOf(right.find(({ value }) => value === 8)?.area ?? '')
  expect(left).toBeCloseTo(160, 6)
  expect(end).toBeGreaterThan(180)
})

test('flat land and no land have no bands', () => {
  expect(bandsOf(terrain(() => 5))).toEqual([])
  expect(bandsOf(terrain(() => null))).toEqual([])
})
