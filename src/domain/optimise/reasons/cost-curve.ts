import type { BlendSpace } from '../blend-space'
import { measureGoal } from './goal'
import { placeAt } from './limit-place'
import { grainOf } from './limit-worths'
import { piecesOf, type Slide } from './pieces'

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
 * where no blend is left, and is empty where there is none at all. Walked from the end where the limit
 * asks least; parametric programming (T. Gal, Postoptimal Analyses, Parametric Programming, and Related
 * Topics (2nd ed. 1995)).
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
  const sign = goal.sense === 'minimise' ? 1 : -1
  const points = [...piecesOf(space, slide, start, end)].flatMap((piece, k): CurvePoint[] => {
    const last = { at: piece.to, value: sign * piece.costAtEnd }
    if (k > 0) return [last]
    const rise = piece.slope * (piece.to - piece.from)
    return [{ at: piece.from, value: sign * (piece.costAtEnd - rise) }, last]
  })
  return limit.side === 'min' ? points : points.reverse()
}
