import { boundRange } from '../../lp/simplex/ranging'
import type { BoundOwner } from '../../lp/simplex/simplex'
import type { Optimal } from '../../lp/simplex/answer'
import { WHOLE_PERCENT } from '../../units'
import type { BlendSpace } from '../space/blend-space'
import type { Side } from '../brief/limits'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { setBounds } from '../space/limit-place'
import type { Bounds } from '../../lp/program'

/**
 * One value of a brief that moves while all else stays: one end of a range, or an oil's share held fast
 * at the value (both ends at once).
 */
export interface Slide {
  readonly owner: BoundOwner
  readonly end: Side | 'both'
  /** The owner's range before and after the move. */
  readonly rest: Bounds
  /** Steps shorter than this are rounding, in the unit of what moves. */
  readonly grain: number
}

/** A straight piece of the curve of the least cost over a moving value. */
export interface Piece {
  readonly from: number
  readonly to: number
  /** Change of the least cost per unit of the value. */
  readonly slope: number
  /** The least cost at `to`. */
  readonly costAtEnd: number
}

/** Slopes nearer than this are one, relative to the larger and to the largest cost of a whole blend. */
const SAME_SLOPE = 1e-7
const NO_SLOPE = 1e-11

/** Steps that find no stretch of a basis double; so many reach across any range. */
const MOST_DOUBLINGS = 60

/**
 * The pieces of the least cost (at the cost the space now has) as a value moves from `from` to `to`, in
 * order, up to where no blend is left; none where there is none a grain beyond `from`. The curve is
 * convex and piecewise linear, so on either side of a value its slope is the true price there, also where
 * the optimum is degenerate and the prices of one basis are not (B. Jansen, J.J. de Jong, C. Roos,
 * T. Terlaky, European J. Operational Research 101 (1997) 15-28).
 *
 * Each warm solve gives a basis, its price, and by ranging how far it stays best: a stretch over which
 * the price is exact. The next solve is a grain beyond its end. So no solve stands at a bend or at the
 * very edge of what is feasible, where rounding decides, and a bend within a grain of another is one
 * with it. The space's bounds are put back at the end.
 */
export function* piecesOf(
  space: BlendSpace,
  slide: Slide,
  from: number,
  to: number,
): Generator<Piece, void, undefined> {
  let piece: Piece | undefined
  try {
    for (const next of stretches(space, slide, from, to)) {
      if (piece && !isSameSlope(space, piece.slope, next.slope)) {
        yield piece
        piece = next
      } else piece = piece ? { ...next, from: piece.from, slope: piece.slope } : next
    }
  } finally {
    setBounds(space, slide.owner, slide.rest)
  }
  if (piece) yield piece
}

/** The first of those pieces; undefined where the value can't move that way by more than two grains. */
export function firstPiece(
  space: BlendSpace,
  slide: Slide,
  from: number,
  to: number,
): Piece | undefined {
  for (const piece of piecesOf(space, slide, from, to)) return piece
  return undefined
}

/** The least cost with the value held somewhere; undefined where no blend is left. */
export function leastCostAt(space: BlendSpace, slide: Slide, value: number): number | undefined {
  const cost = bestAt(space, slide, value)?.objective
  setBounds(space, slide.owner, slide.rest)
  return cost
}

/** The stretches over which one basis stays best. */
function* stretches(
  space: BlendSpace,
  slide: Slide,
  from: number,
  to: number,
): Generator<Piece, void, undefined> {
  const way = Math.sign(to - from)
  const isBefore = (a: number, b: number) => way * (b - a) > slide.grain
  let start = from
  let doublings = 0
  for (let at = from + way * slide.grain; isBefore(at, to);) {
    const best = bestAt(space, slide, at)
    if (!best) return
    const reach = reachOf(space, slide, way)
    if (isBefore(at, reach)) {
      const end = isBefore(reach, to) ? reach : to
      const slope = slopeOf(best, slide)
      yield { from: start, to: end, slope, costAtEnd: best.objective + slope * (end - at) }
      start = end
      doublings = 0
    } else if (++doublings > MOST_DOUBLINGS)
      throw new UnsoundAnswer(`No basis stays best for any stretch beyond ${start}`)
    at = (doublings > 0 ? at : start) + way * slide.grain * 2 ** doublings
  }
}

function bestAt(space: BlendSpace, slide: Slide, value: number): Optimal | undefined {
  const { end, rest } = slide
  setBounds(space, slide.owner, {
    lower: end === 'max' ? rest.lower : value,
    upper: end === 'min' ? rest.upper : value,
  })
  const outcome = space.simplex.solve()
  if (outcome.status === 'unbounded')
    throw new UnsoundAnswer('A space of limited shares was called unbounded')
  return outcome.status === 'optimal' ? outcome : undefined
}

/** How far the value may move that way with the present basis still best. */
function reachOf({ simplex }: BlendSpace, { owner, end }: Slide, way: number): number {
  const sides = [
    ...(end === 'max' ? [] : [boundRange(simplex, owner, 'lower')]),
    ...(end === 'min' ? [] : [boundRange(simplex, owner, 'upper')]),
  ]
  return way > 0
    ? Math.min(...sides.map(({ upper }) => upper))
    : Math.max(...sides.map(({ lower }) => lower))
}

/** The price of the moving value, in cost per unit. */
function slopeOf({ duals, reducedCosts }: Optimal, { owner, end }: Slide): number {
  const price = (owner.kind === 'row' ? duals : reducedCosts)[owner.index] ?? NaN
  if (end === 'min') return Math.max(0, price)
  if (end === 'max') return Math.min(0, price)
  return price
}

function isSameSlope(space: BlendSpace, a: number, b: number): boolean {
  const size = Math.max(Math.abs(a), Math.abs(b))
  return Math.abs(a - b) <= SAME_SLOPE * size + NO_SLOPE * wholeCost(space)
}

/** The largest cost that a whole blend of one oil has at the present cost of the space. */
export function wholeCost({ simplex }: BlendSpace): number {
  return (
    simplex.program.cost.reduce((most, one) => Math.max(most, Math.abs(one)), 0) * WHOLE_PERCENT
  )
}
