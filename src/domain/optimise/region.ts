import type { Blend } from '../blend/blend'
import type { Library } from '../blend/library'
import { blendValue, oilValue } from '../blend/values'
import { fractionFromPercent } from '../units'
import { type Brief, pricesOf } from './brief'
import { shareProgram } from './brief-program'
import type { LinearProgram, SolveProgram } from './program'
import { withoutWishesOn } from './ranges'
import { breaches, UnsoundAnswer } from './verify'

/** A pair of measure ids: what runs across and what runs up. */
export type Axes = readonly [string, string]

/** A corner of the region of two measures, and a blend that reaches it. */
export interface Corner {
  readonly x: number
  readonly y: number
  readonly blend: Blend
}

/**
 * How far a point must lie outside an edge to count as a new corner, as a fraction of the region's
 * size. Solvers keep rows to about 1e-8 of their size, so a tenfold margin separates corners from noise.
 */
const CORNER_TOLERANCE = 1e-7

/** Directions of the first solves: the ends of both axes, lexicographically apart by the refinement. */
const COMPASS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
]

/**
 * All that the shelf can reach on two measures with every other limit of the brief kept: the exact
 * corners of a convex region, counter-clockwise, each with a blend. Wishes on the two measures
 * themselves are left out, so that the region shows what lies around them. One corner means a single
 * point, two a line; none means that no blend keeps the rest of the brief.
 *
 * The region is the image of the blends under a linear map, so it is found by dichotomic search: from
 * the ends of both axes, each edge is pushed outward along its normal until nothing lies beyond it
 * (Aneja & Nair 1979, Management Science 25:73, applied all the way round). About two solves a corner.
 */
export function attainableRegion(
  brief: Brief,
  axes: Axes,
  library: Library,
  solve: SolveProgram,
): Corner[] {
  const search = supportSearch(withoutWishesOn(brief, axes), axes, library, solve)
  const first = search(...(COMPASS[0] ?? [1, 0]))
  if (!first) return []
  const starts = COMPASS.map(([dx, dy]) => search(dx, dy) ?? first)
  const scale = sizeOf(starts)
  const ring = starts.flatMap((from, index) => {
    const to = starts[(index + 1) % starts.length] ?? first
    return [from, ...between(from, to, search, scale)]
  })
  return withoutRepeats(ring, scale)
}

type Search = (dx: number, dy: number) => Corner | undefined

interface Size {
  readonly width: number
  readonly height: number
}

function supportSearch(brief: Brief, axes: Axes, library: Library, solve: SolveProgram): Search {
  const program = shareProgram(brief, library)
  const prices = pricesOf(brief)
  const oils = Object.keys(brief.oils)
  const value = (axis: string) =>
    oils.map((oil) => fractionFromPercent(oilValue(library, prices, axis, oil)))
  const [across, up] = [value(axes[0]), value(axes[1])]
  return (dx, dy) => {
    const length = Math.hypot(dx, dy)
    const cost = oils.map((_, j) => (dx * (across[j] ?? 0) + dy * (up[j] ?? 0)) / length)
    const outcome = solve(withCost(program, cost))
    if (outcome.status === 'infeasible') return undefined
    if (outcome.status === 'unbounded') throw new UnsoundAnswer('A region of blends is unbounded')
    const blend = Object.fromEntries(oils.map((oil, j) => [oil, outcome.point[j] ?? NaN]))
    const wrong = breaches(brief, blend, library)
    if (wrong.length > 0) throw new UnsoundAnswer(`A corner breaks the brief: ${wrong.join('; ')}`)
    const at = (axis: string) => blendValue(library, prices, axis, blend)
    return { x: at(axes[0]), y: at(axes[1]), blend }
  }
}

function withCost(program: LinearProgram, cost: readonly number[]): LinearProgram {
  const variables = program.variables.map((one, index) => ({ ...one, cost: cost[index] ?? 0 }))
  return { ...program, sense: 'max', variables }
}

/** Corners strictly between two neighbours on the outer side, in order. */
function between(from: Corner, to: Corner, search: Search, size: Size): Corner[] {
  const [nx, ny] = normal(from, to, size)
  if (Math.hypot(nx * size.width, ny * size.height) <= CORNER_TOLERANCE) return []
  const found = search(nx, ny)
  if (!found) throw new UnsoundAnswer('A corner vanished while its region was walked')
  const beyond = nx * (found.x - from.x) + ny * (found.y - from.y)
  if (beyond <= CORNER_TOLERANCE) return []
  return [...between(from, found, search, size), found, ...between(found, to, search, size)]
}

/** Outward normal of an edge walked counter-clockwise, scaled so that its product with a step is in edge lengths. */
function normal(from: Corner, to: Corner, { width, height }: Size): [number, number] {
  const dx = (to.x - from.x) / width
  const dy = (to.y - from.y) / height
  const length = Math.hypot(dx, dy)
  if (length <= CORNER_TOLERANCE) return [0, 0]
  return [dy / length / width, -dx / length / height]
}

function sizeOf(corners: readonly Corner[]): Size {
  const span = (values: number[]) => Math.max(...values) - Math.min(...values) || 1
  return { width: span(corners.map(({ x }) => x)), height: span(corners.map(({ y }) => y)) }
}

/** Drops repeated points and those that lie on the straight line of their neighbours. */
function withoutRepeats(ring: readonly Corner[], size: Size): Corner[] {
  const apart = (a: Corner, b: Corner) =>
    Math.hypot((a.x - b.x) / size.width, (a.y - b.y) / size.height) > CORNER_TOLERANCE
  const single = ring.filter((corner, i) => i === 0 || apart(corner, ring[i - 1] ?? corner))
  const last = single.at(-1)
  if (single.length > 1 && last && single[0] && !apart(last, single[0])) single.pop()
  if (single.length < 3) return single
  return single.filter((corner, i) => {
    const before = single.at(i - 1) ?? corner
    const after = single[(i + 1) % single.length] ?? corner
    const [nx, ny] = normal(before, after, size)
    return Math.abs(nx * (corner.x - before.x) + ny * (corner.y - before.y)) > CORNER_TOLERANCE
  })
}
