/**
 * A blend by two objectives of which less is better, each scaled so that the frontier runs from about 0
 * to 1.
 */
export interface TradePoint {
  readonly u: number
  readonly v: number
  /** In percent, in the order of the space's oils. */
  readonly shares: Float64Array
}

/**
 * A straight piece of a frontier, u rising and v falling from one blend to another of the same oils, so
 * that all mixtures of the two are on it; or a single blend.
 */
export interface Piece {
  readonly from: TradePoint
  readonly to: TradePoint
  /** Whether the piece only comes up to its end: a better one begins right below it. */
  readonly isOpen: boolean
}

/** Points nearer than this in either scaled objective count as one, and no blend is further below a frontier. */
export const FRONTIER_TOLERANCE = 1e-7

/** Cut-off bits shorter than this are rounding. */
const NOTHING = 1e-12

/**
 * A frontier as pieces with u rising. Between two pieces, and after the last, nothing betters the end of
 * the piece before; so the frontier is a falling function of u, continuous from the right.
 */
export type Envelope = readonly Piece[]

/** The pieces through the corners of one convex slice, u rising; a point if there is only one. */
export function piecesThrough(corners: readonly TradePoint[]): Piece[] {
  const [first] = corners
  if (first && corners.length === 1) return [{ from: first, to: first, isOpen: false }]
  return corners.slice(1).map((to, k) => ({ from: corners[k] ?? to, to, isOpen: false }))
}

/** What neither of two frontiers betters of the other. Where they are equal the first one's stays. */
export function merged(first: Envelope, second: Envelope): Piece[] {
  const kept = [
    ...first.flatMap((piece) => partsBelow(piece, second, FRONTIER_TOLERANCE)),
    ...second.flatMap((piece) => partsBelow(piece, first, -FRONTIER_TOLERANCE)),
  ]
  return kept.toSorted((a, b) => a.from.u - b.from.u || b.from.v - a.from.v)
}

/** The frontier's v at u, or just before it; Infinity before its first piece. */
export function heightOf(envelope: Envelope, u: number, side: 'at' | 'before' = 'at'): number {
  const piece = envelope.findLast(({ from }) => (side === 'at' ? from.u <= u : from.u < u))
  return piece === undefined ? Infinity : u < piece.to.u ? pointAt(piece, u).v : piece.to.v
}

/** The point of a piece at u. */
function pointAt({ from, to }: Piece, u: number): TradePoint {
  if (u <= from.u) return from
  if (u >= to.u) return to
  const part = (u - from.u) / (to.u - from.u)
  const between = (a: number, b: number) => a + part * (b - a)
  const shares = from.shares.map((share, oil) => between(share, to.shares[oil] ?? NaN))
  return { u, v: between(from.v, to.v), shares }
}

/** The parts of a piece that lie below another frontier, or above it by no more than `tie`. */
function partsBelow(piece: Piece, other: Envelope, tie: number): Piece[] {
  const { from, to } = piece
  if (to.u - from.u <= NOTHING) return to.v - heightOf(other, to.u) <= tie ? [piece] : []
  const bends = other
    .flatMap((one) => [one.from.u, one.to.u])
    .filter((u) => u > from.u && u < to.u)
    .toSorted((a, b) => a - b)
  const cuts = [from.u, ...bends, to.u]
  const spans = cuts.slice(1).flatMap((end, k) => spanBelow(piece, other, cuts[k] ?? end, end, tie))
  return joined(spans).map(([start, end]) => ({
    from: pointAt(piece, start),
    to: pointAt(piece, end),
    isOpen:
      (end === to.u && piece.isOpen) ||
      pointAt(piece, end).v - heightOf(other, end) > FRONTIER_TOLERANCE,
  }))
}

type Span = readonly [start: number, end: number]

/** The part of a span without bends in which a piece lies below, cut where the two cross. */
function spanBelow(piece: Piece, other: Envelope, start: number, end: number, tie: number): Span[] {
  if (end - start <= NOTHING) return []
  const atStart = pointAt(piece, start).v - heightOf(other, start)
  const atEnd = pointAt(piece, end).v - heightOf(other, end, 'before')
  if (atStart <= tie && atEnd <= tie) return [[start, end]]
  if (atStart > tie && atEnd > tie) return []
  const crossing = start + ((end - start) * atStart) / (atStart - atEnd)
  const at = Math.min(end, Math.max(start, crossing))
  const [a, b] = atStart <= tie ? [start, at] : [at, end]
  return b - a > NOTHING ? [[a, b]] : []
}

/** Spans of which neighbours that touch are one. */
function joined(spans: readonly Span[]): Span[] {
  return spans.reduce<Span[]>((done, [start, end]) => {
    const last = done.at(-1)
    if (last?.[1] !== start) return [...done, [start, end]]
    return [...done.slice(0, -1), [last[0], end]]
  }, [])
}

/** The corners of the frontier's lower convex hull, u rising: the best for some weights of the two. */
export function hullCorners(envelope: Envelope): TradePoint[] {
  const points = envelope.flatMap(({ from, to }) => [from, to])
  return points.reduce<TradePoint[]>((hull, point) => {
    while (hull.length > 1 && !isBelowLine(hull.at(-1), hull.at(-2), point)) hull.pop()
    const last = hull.at(-1)
    const isRepeat =
      last !== undefined && Math.abs(last.u - point.u) <= NOTHING && point.v >= last.v - NOTHING
    if (last !== undefined && !isRepeat && point.u - last.u <= NOTHING) hull.pop()
    return isRepeat ? hull : [...hull, point]
  }, [])
}

/** Whether a point lies below the line between two others, beyond what is noise. */
function isBelowLine(
  point: TradePoint | undefined,
  from: TradePoint | undefined,
  to: TradePoint,
): boolean {
  if (!point || !from) return true
  const [du, dv] = [to.u - from.u, to.v - from.v]
  const cross = du * (point.v - from.v) - dv * (point.u - from.u)
  return cross < -FRONTIER_TOLERANCE * Math.hypot(du, dv)
}
