import { tickStep } from 'd3'
import type { Terrain } from '../domain/optimise/map/terrain-linear'
import type { MapScales } from './map'
import { STEPS } from './terrain'

/** One step of a height that is told for cells and not for points. */
export interface CellBand {
  readonly value: number
  /** SVG path of the cells that are at least this high. */
  readonly area: string
}

/**
 * The bands of a terrain whose heights stand for all that lies nearer to a point of the grid than to the
 * others: whole cells, without lines between them, since nothing is known of the way from one to the next.
 */
export function cellBands({ x, y, values }: Terrain, scales: MapScales): CellBand[] {
  const known = values.flat().filter((value) => value !== null)
  const [low, high] = [Math.min(...known), Math.max(...known)]
  if (known.length === 0 || high <= low) return []
  const step = tickStep(low, high, STEPS)
  const first = Math.ceil(low / step)
  const count = Math.floor(high / step) - first + 1
  const [across, up] = [bordersOf(x).map(scales.x), bordersOf(y).map(scales.y)]
  return Array.from({ length: count }, (_, i) => {
    const value = (first + i) * step
    const rows = values.map((row, number) => {
      const [bottom = 0, top = 0] = [up[number], up[number + 1]]
      const isHigh = row.map((one) => one !== null && one >= value)
      return runsOf(isHigh)
        .map(
          ([from, to]) =>
            `M${across[from] ?? 0} ${bottom}H${across[to] ?? 0}V${top}H${across[from] ?? 0}Z`,
        )
        .join('')
    })
    return { value, area: rows.join('') }
  })
}

/** Borders of the cells around evenly spaced marks: half-way between them, and as far beyond the ends. */
function bordersOf(marks: readonly number[]): number[] {
  const [first = 0, second = first] = marks
  const half = (second - first) / 2
  return [...marks.map((mark) => mark - half), (marks.at(-1) ?? 0) + half]
}

/** The first and, exclusive, the last number of each run of what is true. */
function runsOf(isIn: readonly boolean[]): [from: number, to: number][] {
  const runs: [number, number][] = []
  isIn.forEach((one, at) => {
    const last = runs.at(-1)
    if (!one) return
    if (last?.[1] === at) last[1] = at + 1
    else runs.push([at, at + 1])
  })
  return runs
}
