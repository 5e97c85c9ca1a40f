import type { BlendSpace } from '../space/blend-space'
import { measureGoal } from '../space/goal'
import { placeAt } from '../space/limit-place'
import { grainOf } from './limit-worths'
import { leastCostAt, piecesOf, type Slide } from './pieces'

/** A bend or an end of the curve of the best goal value over one limit. */
export interface CurvePoint {
  /** Value of the limit, in its unit. */
  readonly at: number
  /** Best goal value with the limit there, in the goal's unit. */
  readonly value: number
}

/**
 * The best value of a brief's goal while one limit moves between `from` and `to` (rising, both finite, in
 * the limit's unit) and all else stays: straight between the points returned, which rise in `at`. It ends
 * where no blend is left: at one point where that is at once, and empty where there is none at all.
 * Walked from the end where the limit asks least; parametric programming (T. Gal, Postoptimal Analyses,
 * Parametric Programming, and Related Topics (2nd ed. 1995)).
 *
 * Expects a goal that is a measure and a limit that the brief states. The wishes of the space are put
 * back before and after; its cost is the goal's afterwards.
 */
export function costCurve(
  space: BlendSpace,
  limitPath: string,
  from: number,
  to: number,
): CurvePoint[] {
  const goal = measureGoal(space)
  if (!goal) throw new Error('A curve needs a goal that is a measure')
  const place = placeAt(space, limitPath)
  const { limit, owner, stated, open } = place
  const slide: Slide = { owner, end: limit.side, rest: stated, grain: grainOf(place) }
  const [least, most] = [Math.max(from, open.lower), Math.min(to, open.upper)]
  const [start, end] = limit.side === 'min' ? [least, most] : [most, least]
  space.restoreAll()
  space.simplex.setCost(goal.cost)
  const points = pointsOf(space, slide, start, end)
  const sign = goal.sense === 'minimise' ? 1 : -1
  const curve = points.map(({ at, value }) => ({ at, value: sign * value }))
  return limit.side === 'min' ? curve : curve.reverse()
}

/** The ends of the pieces of the least cost; only the start where none is left beyond it. */
function pointsOf(space: BlendSpace, slide: Slide, start: number, end: number): CurvePoint[] {
  const pieces = [...piecesOf(space, slide, start, end)]
  const [first] = pieces
  if (!first) {
    const value = leastCostAt(space, slide, start)
    return value === undefined ? [] : [{ at: start, value }]
  }
  const value = first.costAtEnd - first.slope * (first.to - first.from)
  const ends = pieces.map(({ to, costAtEnd }) => ({ at: to, value: costAtEnd }))
  return [{ at: first.from, value }, ...ends]
}
