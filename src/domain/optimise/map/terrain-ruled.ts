import { BlendSpace } from '../space/blend-space'
import { withoutWishesOn } from '../brief/ranges'
import type { Interval } from '../../interval'
import type { Axes } from './region'
import type { Terrain } from './terrain-linear'
import { Allowance, type GoOn } from '../search/allowance'
import { rangesUnderRules } from '../ranges/attainable-ruled'
import { type Height, Heights, type Cell } from './heights'
import { endsFromRow, type HeightGrid, type RegionEnd } from './terrain-edge'

/** A terrain under rules, as far as it is known. */
export interface RuledTerrain extends Terrain {
  /** What is known of each value: only those that are `exact` or have a `gap` are not null. */
  readonly states: readonly (readonly Height['state'][])[]
  /** By how much the best may be better than each value at most, in its unit: 0 if exact, null without one. */
  readonly gaps: readonly (readonly (number | null)[])[]
  /** Where the region ends between two points of the grid; found after all heights. */
  readonly ends: readonly RegionEnd[]
  /**
   * Whether a value is the best of all that is nearer to its point than to another, as it is where shares
   * go in steps, and not of the point alone.
   */
  readonly inCells: boolean
  /** What is still being found; `complete` where nothing is. */
  readonly stage: 'heights' | 'edge' | 'complete'
}

/** How a terrain came to its end; without a region none was yielded. */
export type TerrainEnd = 'complete' | 'stopped' | 'infeasible' | 'undecided'

/** What may be asked of a terrain besides its measures. */
export interface RuledTerrainOptions {
  /** The part of the map to reckon, in the axes' units; the whole region if left out. */
  readonly window?: { readonly x: Interval; readonly y: Interval } | undefined
  /** Columns and rows of one grid after another; GRID_SIZES if left out. */
  readonly sizes?: readonly number[] | undefined
  /** Most programs for one search; MOST_NODES if left out. */
  readonly nodes?: number | undefined
  /** Asked at every program; true ends the terrain with what was yielded. */
  readonly shouldStop?: (() => boolean) | undefined
}

/** Coarse to fine, the last one fine enough for contours. */
export const GRID_SIZES: readonly number[] = [8, 15, 30, 60]

/** A height that takes more programs than this, a tenth of a second, is told with its gap. */
const MOST_NODES = 2000

/**
 * The best value of a measure over a map of two others under rules, from a coarse grid to a fine one.
 * Yields after every row, so that whoever asks can show what there is, or stop. All limits and rules are
 * kept but the wishes on the two axes.
 *
 * Under rules the region need not be convex or in one piece. Every point of a grid has a search of its
 * own, so its height is exact or has its gap, and nothing is drawn where no blend was found; pieces of
 * the region that lie between the points of the last grid don't show. Last, the region's edge is found
 * on every line of that grid from a point with a blend to one without. With steps hardly a blend hits a
 * point exactly: then a height is the best within half a step of the grid around it, and no edge is told.
 *
 * A search starts cold and goes on warm from program to program. Starting it with what a neighbour knows,
 * as a limit on the goal, was no faster: 0.1 to 0.5 ms a point of 40 oils either way (measured).
 */
export function* terrainUnderRules(
  { brief, library }: BlendSpace,
  axes: Axes,
  value: string,
  options: RuledTerrainOptions = {},
): Generator<RuledTerrain, TerrainEnd, void> {
  const { sizes = GRID_SIZES, nodes = MOST_NODES, shouldStop = () => false } = options
  const space = new BlendSpace(withoutWishesOn(brief, axes), library)
  const extent = extentOf(space, axes, options.window, nodes, shouldStop)
  if (typeof extent === 'string') return shouldStop() ? 'stopped' : extent
  const hasSteps = brief.rules?.shareStep !== undefined
  const heights = new Heights(space, axes, value)
  const goOn: GoOn = (progress) => progress.nodes < nodes && !shouldStop()
  for (const size of sizes) {
    const [x, y] = [marks(extent.x, size), marks(extent.y, size)]
    const rows: Height[][] = []
    for (const up of y) {
      const places = x.map((across): Cell => ({
        x: cell(across, x, hasSteps),
        y: cell(up, y, hasSteps),
      }))
      rows.push(places.map((place) => heights.at(place, goOn)))
      if (shouldStop()) return 'stopped'
      yield told(axes, { x, y, rows }, [], 'heights', hasSteps)
    }
    if (size !== sizes.at(-1)) continue
    const ends: RegionEnd[] = []
    for (const row of hasSteps ? [] : y.keys()) {
      ends.push(...endsFromRow(heights, { x, y, rows }, row, goOn))
      if (shouldStop()) return 'stopped'
      yield told(axes, { x, y, rows }, [...ends], 'edge', hasSteps)
    }
    yield told(axes, { x, y, rows }, ends, 'complete', hasSteps)
  }
  return 'complete'
}

/** The part of the map to reckon: the window, or as much of it as can hold any blend. */
function extentOf(
  space: BlendSpace,
  axes: Axes,
  window: RuledTerrainOptions['window'],
  nodes: number,
  shouldStop: () => boolean,
): { readonly x: Interval; readonly y: Interval } | 'infeasible' | 'undecided' {
  const subjects = axes.map((axis) => space.perPercent(axis))
  // Two ends of two axes, each with as many programs as a height.
  const allowance = new Allowance({ timeMs: Infinity, nodes: 4 * nodes, shouldStop })
  const ranges = rangesUnderRules(space, subjects, allowance)
  if (typeof ranges === 'string') return ranges
  const part = (range: Interval | undefined, view: Interval | undefined): Interval => ({
    min: Math.max(range?.min ?? NaN, view?.min ?? -Infinity),
    max: Math.min(range?.max ?? NaN, view?.max ?? Infinity),
  })
  const x = part(ranges[0]?.outer, window?.x)
  const y = part(ranges[1]?.outer, window?.y)
  return x.min <= x.max && y.min <= y.max ? { x, y } : 'infeasible'
}

/** So many marks evenly over a range, both its ends among them; one if it has no width. */
function marks({ min, max }: Interval, count: number): number[] {
  if (max <= min || count < 2) return [min]
  return Array.from({ length: count }, (_, k) => min + ((max - min) * k) / (count - 1))
}

/** What a mark stands for: itself, or where there are steps all that is nearer to it than to another. */
function cell(mark: number, all: readonly number[], isWide: boolean): readonly [number, number] {
  const [first = mark, second = mark] = all
  const half = isWide ? (second - first) / 2 : 0
  return [mark - half, mark + half]
}

function told(
  axes: Axes,
  { x, y, rows }: HeightGrid,
  ends: readonly RegionEnd[],
  stage: RuledTerrain['stage'],
  inCells: boolean,
): RuledTerrain {
  const open = x.map((): Height => ({ state: 'open' }))
  const all = y.map((_, row) => rows[row] ?? open)
  return {
    axes,
    x,
    y,
    values: all.map((row) => row.map((height) => ('value' in height ? height.value : null))),
    states: all.map((row) => row.map(({ state }) => state)),
    gaps: all.map((row) =>
      row.map((height) => ('gap' in height ? height.gap : 'value' in height ? 0 : null)),
    ),
    ends,
    inCells,
    stage,
  }
}
