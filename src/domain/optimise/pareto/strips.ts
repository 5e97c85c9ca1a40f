import { type Envelope, FRONTIER_TOLERANCE, hullCorners, type TradePoint } from './envelope'
import type { Stretch, Weights } from './trade'

/**
 * A test of a frontier: whether any blend with u in the strip has a weighted sum below `level`. If not,
 * nothing betters the frontier there.
 */
export interface Strip extends Stretch {
  readonly weights: Weights
  readonly level: number
}

/** The longest stretch before the frontier, and after it. */
const EVERYWHERE: Stretch = { from: -Infinity, to: Infinity }

/**
 * Tests of the edges of the frontier's convex hull: together they prove which blends are best for some
 * weights of the two objectives.
 */
export function hullStrips(envelope: Envelope): Strip[] {
  const corners = hullCorners(envelope)
  return corners.slice(1).flatMap((to, k) => {
    const from = corners[k]
    return from ? [{ ...along(from, to), ...EVERYWHERE }] : []
  })
}

/**
 * Tests of the whole frontier, in order: each piece along its own slope, each gap for anything lower than
 * the end before it, and what lies before and after. A strip ends a little before what begins below it.
 */
export function allStrips(envelope: Envelope): Strip[] {
  const [first, last] = [envelope[0], envelope.at(-1)]
  if (!first || !last) return []
  const between = envelope.flatMap(({ from, to, isOpen }, k): Strip[] => {
    const next = envelope[k + 1]
    const pieceEnd = isOpen ? to.u - FRONTIER_TOLERANCE : to.u
    const gapEnd = (next?.from.u ?? to.u) - FRONTIER_TOLERANCE
    const piece = { ...along(from, to), from: from.u, to: pieceEnd }
    const gap: Strip = { weights: [0, 1], level: to.v, from: to.u, to: gapEnd }
    return [...(pieceEnd > from.u ? [piece] : []), ...(gapEnd > to.u ? [gap] : [])]
  })
  return [
    { weights: [1, 0], level: first.from.u, ...EVERYWHERE },
    ...between,
    { weights: [0, 1], level: last.to.v, ...EVERYWHERE },
  ]
}

type Scaled = Pick<TradePoint, 'u' | 'v'>

/** Weights and level of the line from one place to another, u rising and v falling. */
function along(from: Scaled, to: Scaled): Pick<Strip, 'weights' | 'level'> {
  const [du, dv] = [to.u - from.u, from.v - to.v]
  const weights = [dv / (du + dv), du / (du + dv)] as const
  return { weights, level: weights[0] * from.u + weights[1] * from.v }
}

/** Strips that have been settled: proved, or given up with what was left of them to prove. */
export class Settled {
  /** Apart from one another. */
  #stretches: readonly Stretch[] = []
  readonly #tests = new Set<string>()

  add(strip: Strip): void {
    this.#tests.add(keyOf(strip))
    if (strip.from === -Infinity) return
    const apart = this.#stretches.filter((one) => !touches(one, strip))
    const one = this.#stretches.filter((other) => touches(other, strip))
    const from = Math.min(strip.from, ...one.map((other) => other.from))
    const to = Math.max(strip.to, ...one.map((other) => other.to))
    this.#stretches = [...apart, { from, to }]
  }

  /** Whether a strip was settled itself or lies within settled ones, up to the tolerance. */
  has(strip: Strip): boolean {
    if (this.#tests.has(keyOf(strip))) return true
    return this.#stretches.some(
      ({ from, to }) =>
        strip.from >= from - FRONTIER_TOLERANCE && strip.to <= to + FRONTIER_TOLERANCE,
    )
  }
}

function touches(a: Stretch, b: Stretch): boolean {
  return a.from <= b.to + FRONTIER_TOLERANCE && b.from <= a.to + FRONTIER_TOLERANCE
}

function keyOf({ from, to, weights, level }: Strip): string {
  return [from, to, ...weights, level].join()
}
