import type { Blend } from '../blend/blend'
import type { Library } from '../blend/library'
import { blendValue, oilValue } from '../blend/values'
import { fractionFromPercent } from '../units'
import { type Brief, pricesOf } from './brief'
import { shareProgram } from './brief-program'
import { CORNER_TOLERANCE, type Size, sizeOf, step, withoutMiddles } from './corners'
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

/** Directions of the first solves, counter-clockwise: the ends of both axes. */
const EAST = [1, 0] as const
const NORTH_WEST_SOUTH = [
  [0, 1],
  [-1, 0],
  [0, -1],
] as const

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
  const first = search(...EAST)
  if (!first) return []
  const walk: Walk = (dx, dy) => search(dx, dy) ?? vanished()
  const starts = [first, ...NORTH_WEST_SOUTH.map(([dx, dy]) => walk(dx, dy))]
  const scale = sizeOf(starts)
  const ring = starts.flatMap((from, index) => {
    const to = starts[(index + 1) % starts.length] ?? first
    return [from, ...between(from, to, walk, scale)]
  })
  return withoutMiddles(ring, scale)
}

type Search = (dx: number, dy: number) => Corner | undefined
/** A search of a region that is known to have blends. */
type Walk = (dx: number, dy: number) => Corner

function vanished(): never {
  throw new UnsoundAnswer('A region has blends in one direction and none in another')
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
function between(from: Corner, to: Corner, walk: Walk, size: Size): Corner[] {
  const [nx, ny] = normal(from, to, size)
  if (Math.hypot(nx * size.width, ny * size.height) <= CORNER_TOLERANCE) return []
  const found = walk(nx, ny)
  const beyond = nx * (found.x - from.x) + ny * (found.y - from.y)
  if (beyond <= CORNER_TOLERANCE) return []
  return [...between(from, found, walk, size), found, ...between(found, to, walk, size)]
}

/** Outward normal of an edge walked counter-clockwise, scaled so that its product with a step is in edge lengths. */
function normal(from: Corner, to: Corner, size: Size): [number, number] {
  const [dx, dy] = step(from, to, size)
  const length = Math.hypot(dx, dy)
  if (length <= CORNER_TOLERANCE) return [0, 0]
  return [dy / length / size.width, -dx / length / size.height]
}
