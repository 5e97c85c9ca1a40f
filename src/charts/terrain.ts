import { contours, geoPath, geoTransform, tickStep, type ContourMultiPolygon } from 'd3'
import type { Terrain } from '../domain/optimise/map/terrain-linear'
import type { MapScales } from './map'

/** One step of a terrain's height. */
export interface Band {
  readonly value: number
  /** SVG path of all that is at least this high. */
  readonly area: string
  /** Every second one is drawn heavier and labelled. */
  readonly heavy: boolean
  /** Where its label stands; missing where the line is too short for one. */
  readonly label: Label | undefined
}

/** Place and slant of a label on its line; px and degrees. */
export interface Label {
  readonly x: number
  readonly y: number
  readonly angle: number
}

/** Steps of height that a terrain should show. */
export const STEPS = 12

/** A line shorter than this gets no label, px. */
const LEAST_LINE_PX = 110

/** Labels keep this far from the line's ends, as a part of its points. */
const LABEL_PART = 0.45

/** One step of a terrain's height as a shape on its grid. */
export interface Step {
  readonly value: number
  readonly heavy: boolean
  readonly shape: ContourMultiPolygon
}

/**
 * The steps of a terrain as shapes on its grid. Heights are exact at the grid's points and run straight
 * between them; the grid is carried a little past the region's edge so that lines reach it, and whoever
 * draws them clips them with the region's exact corners.
 */
export function terrainSteps({ x, y, values }: Terrain): Step[] {
  const known = values.flat().filter((value) => value !== null)
  const [low, high] = [Math.min(...known), Math.max(...known)]
  if (known.length === 0 || high - low <= 0) return []
  const filled = carriedOutward(values)
  const step = tickStep(low, high, STEPS)
  const first = Math.ceil(low / step)
  const count = Math.floor(high / step) - first + 1
  const grid = contours().size([x.length, y.length])
  return Array.from({ length: count }, (_, i) => {
    const value = (first + i) * step
    return { value, heavy: (first + i) % 2 === 0, shape: grid.contour(filled, value) }
  })
}

/** The steps of a terrain as they are drawn: SVG paths, and labels on the heavy lines. */
export function terrainBands(steps: readonly Step[], terrain: Terrain, scales: MapScales): Band[] {
  const draw = geoPath(projection(terrain.x, terrain.y, scales))
  return steps.map(({ value, heavy, shape }) => ({
    value,
    area: draw(shape) ?? '',
    heavy,
    label: heavy ? labelOn(shape, terrain, scales) : undefined,
  }))
}

/** Grid coordinates to px; d3's contours count a cell's middle as a half. */
function projection(x: readonly number[], y: readonly number[], scales: MapScales) {
  const toX = gridScale(x, scales.x)
  const toY = gridScale(y, scales.y)
  return geoTransform({
    point(gx, gy) {
      this.stream.point(toX(gx), toY(gy))
    },
  })
}

function gridScale(values: readonly number[], scale: (value: number) => number) {
  const [first, last] = [values[0] ?? 0, values.at(-1) ?? 0]
  const step = (last - first) / (values.length - 1)
  return (grid: number) => scale(first + (grid - 0.5) * step)
}

/** How many rings of empty points around the land get heights: lines that reach its edge need no more. */
const CARRIED_RINGS = 3

/**
 * The heights as one row-major array, the empty points next to the land filled by carrying the slope
 * outward: twice the neighbour less the one behind it, averaged over the directions that know both. What
 * lies further out stays NaN, for which contours draws nothing.
 */
function carriedOutward(values: Terrain['values']): number[] {
  const height = values.length
  const width = values[0]?.length ?? 0
  // Two empty points around the grid save every look whether a neighbour is inside it.
  const wide = width + 2 * MARGIN
  const cells = new Float64Array(wide * (height + 2 * MARGIN)).fill(NaN)
  const placeOf = (column: number, row: number) => (row + MARGIN) * wide + column + MARGIN
  values.forEach((row, y) =>
    row.forEach((value, x) => {
      if (value !== null) cells[placeOf(x, y)] = value
    }),
  )
  const steps = DIRECTIONS.map(([dx, dy]) => dy * wide + dx)
  for (let ring = 0; ring < CARRIED_RINGS; ring++) {
    const before = cells.slice()
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const place = placeOf(x, y)
        if (Number.isNaN(before[place])) cells[place] = meanGuess(before, place, steps)
      }
  }
  return values.flatMap((row, y) => row.map((_, x) => cells[placeOf(x, y)] ?? NaN))
}

/** What the neighbours of a point let one expect there; NaN where none has a height. */
function meanGuess(cells: Float64Array, place: number, steps: readonly number[]): number {
  let [sum, count] = [0, 0]
  for (const step of steps) {
    const near = cells[place + step] ?? NaN
    if (Number.isNaN(near)) continue
    const behind = cells[place + 2 * step] ?? NaN
    sum += Number.isNaN(behind) ? near : 2 * near - behind
    count++
  }
  return count === 0 ? NaN : sum / count
}

const MARGIN = 2

const DIRECTIONS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const

/** A label near the middle of the longest stretch of a line inside the land, along its slant. */
function labelOn(
  shape: ContourMultiPolygon,
  { x, y, values }: Terrain,
  scales: MapScales,
): Label | undefined {
  const [toX, toY] = [gridScale(x, scales.x), gridScale(y, scales.y)]
  const isLand = ([gx = 0, gy = 0]: readonly number[]) => {
    const value = values[Math.floor(gy)]?.[Math.floor(gx)]
    return value !== undefined && value !== null
  }
  const runs = shape.coordinates.flat().flatMap((ring) => stretches(ring, isLand))
  const points = runs
    .map((run) => run.map(([gx = 0, gy = 0]): [number, number] => [toX(gx), toY(gy)]))
    .sort((a, b) => lengthOf(b) - lengthOf(a))
    .at(0)
  if (!points || lengthOf(points) < LEAST_LINE_PX) return undefined
  const middle = Math.floor(points.length * LABEL_PART)
  const [from, to] = [
    points[Math.max(0, middle - 2)],
    points[Math.min(points.length - 1, middle + 2)],
  ]
  const here = points[middle]
  if (!from || !to || !here) return undefined
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  const upright = angle > 90 ? angle - 180 : angle < -90 ? angle + 180 : angle
  return { x: here[0], y: here[1], angle: upright }
}

/** The runs of a ring's points that satisfy a test. */
function stretches<T>(ring: readonly T[], test: (point: T) => boolean): T[][] {
  const runs: T[][] = []
  let open = false
  for (const point of ring) {
    if (!test(point)) open = false
    else if (open) runs.at(-1)?.push(point)
    else {
      runs.push([point])
      open = true
    }
  }
  return runs
}

function lengthOf(points: readonly (readonly [number, number])[]): number {
  return points.reduce((sum, point, i) => {
    const before = points[i - 1]
    return before ? sum + Math.hypot(point[0] - before[0], point[1] - before[1]) : sum
  }, 0)
}
