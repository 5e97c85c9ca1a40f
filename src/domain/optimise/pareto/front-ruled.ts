import type { Blend } from '../../blend/blend'
import { AccuracyError } from '../../lp/simplex/simplex'
import type { BlendSpace } from '../space/blend-space'
import type { SurfaceAxis } from './blend-surface'
import { Allowance, type GoOn, type SearchBudget } from '../search/allowance'
import { checkedBlend } from '../space/found'
import {
  type Envelope,
  FRONTIER_TOLERANCE,
  heightOf,
  hullCorners,
  merged,
  type Piece,
  piecesThrough,
  type TradePoint,
} from './envelope'
import { searchFor } from '../search/search'
import { allStrips, hullStrips, Settled, type Strip } from './strips'
import { Trade } from './trade'

/** An end of a piece of the frontier, with a blend that reaches it. */
export interface RuledVertex {
  /** The axes' measures, in their units. */
  readonly measures: Readonly<Record<string, number>>
  readonly blend: Blend
  /** Whether it is the best for some weights of the two axes; the others only a limit on one finds. */
  readonly isSupported: boolean
  /** Whether a facet only comes up to it, another blend being as good on one axis and better on the other. */
  readonly isOpen: boolean
}

/** A stretch of the frontier that time did not suffice to prove. */
export interface Unproved {
  /** Values of the first axis's measure, in its unit; null where it has no end on that side. */
  readonly from: number | null
  readonly to: number | null
  /**
   * How far beyond the frontier a blend might lie there: no blend's weighted sum of both axes is better by
   * more, each axis counted from 0 to 1 over the frontier's span and the weights adding to 1.
   */
  readonly gap: number
}

/** The trade-off of two measures under rules: in pieces, since other oils come in from one to the next. */
export type RuledFrontier =
  | {
      /** `feasible` where time ran out: all vertices keep the rules, but better ones may be missing. */
      readonly status: 'optimal' | 'feasible'
      readonly axes: readonly [SurfaceAxis, SurfaceAxis]
      /** In order along the frontier, from the best on the first axis on. */
      readonly vertices: readonly RuledVertex[]
      /**
       * Numbers of the two vertices of each straight stretch, or of the one of a blend that stands alone.
       * All mixtures of a facet's two blends keep the rules; mixtures across facets need not.
       */
      readonly facets: readonly (readonly number[])[]
      /** Points nearer than this count as one, and nothing lies further beyond: a fraction of each axis's span. */
      readonly tolerance: number
      /** Empty if and only if the frontier is complete, to the tolerance. */
      readonly unproved: readonly Unproved[]
      /** The largest gap; 0 where all is proved. */
      readonly gap: number
    }
  /** Time ran out before any blend was found. */
  | { readonly status: 'undecided' }
  | { readonly status: 'infeasible' }

/**
 * All that nothing betters on two axes at once, every limit and rule kept: supported points, which are
 * best for some weights, and the unsupported ones between them, which are not.
 *
 * A slice is what one set of oils can reach, and convex; the frontier is the lower envelope of slices.
 * From the best blends on either axis on, the frontier so far is tested: first along the edges of its
 * convex hull, by weighted sums (dichotomic search), which proves the supported points; then piece by
 * piece and gap by gap, with the first axis held to that stretch (the ε-constraint method). A search
 * either proves that nothing lies below, or meets a blend, whose whole slice joins the envelope. There
 * are finitely many slices, so it ends with a complete frontier. With steps a slice is a single blend,
 * and there may be thousands of them.
 *
 * Sources: Y.P. Aneja, K.P.K. Nair, Management Science 25 (1979) 73-78; Y.Y. Haimes, L.S. Lasdon, D.A.
 * Wismer, IEEE Trans. Systems, Man, and Cybernetics 1 (1971) 296-297; pieces and gaps after N. Boland,
 * H. Charkhgard, M. Savelsbergh, INFORMS J. Computing 27 (2015) 597-618.
 */
export function frontierUnderRules(
  space: BlendSpace,
  axes: readonly [SurfaceAxis, SurfaceAxis],
  budget?: SearchBudget,
): RuledFrontier {
  space.restoreAll()
  return new FrontierSearch(new Trade(space, axes), new Allowance(budget)).run()
}

class FrontierSearch {
  #envelope: Envelope = []
  readonly #settled = new Settled()
  readonly #unproved: Unproved[] = []

  constructor(
    private readonly trade: Trade,
    private readonly allowance: Allowance,
  ) {}

  run(): RuledFrontier {
    const nothing = this.#begin()
    if (nothing) return { status: nothing }
    this.#proveAll(hullStrips)
    this.#proveAll(allStrips)
    return this.#told()
  }

  /** Starts the frontier with the best blend on either axis. */
  #begin(): 'undecided' | 'infeasible' | undefined {
    const everywhere = { from: -Infinity, to: Infinity }
    const ends = [[1, 0] as const, [0, 1] as const].map((weights, k) =>
      searchFor(this.trade.question(weights, everywhere), this.allowance.share(3 - k)),
    )
    if (ends.some(({ status }) => status === 'infeasible')) return 'infeasible'
    const found = ends.flatMap((end) => ('shares' in end ? [end.shares] : []))
    if (found.length === 0) return 'undecided'
    for (const shares of found) this.#take(shares)
    this.trade.scaleTo(this.#envelope.flatMap(({ from, to }) => [from, to]))
    this.#envelope = []
    for (const shares of found) this.#take(shares)
    return undefined
  }

  #take(shares: Float64Array): void {
    this.#envelope = merged(this.#envelope, piecesThrough(this.trade.sliceThrough(shares)))
  }

  /** Settles one strip after another, the longest first, until all are. */
  #proveAll(stripsOf: (envelope: Envelope) => readonly Strip[]): void {
    for (;;) {
      const open = stripsOf(this.#envelope).filter((strip) => !this.#settled.has(strip))
      const [strip] = open.toSorted((a, b) => b.to - b.from - (a.to - a.from))
      if (!strip) return
      this.#settle(strip, this.allowance.share(open.length))
    }
  }

  #settle(strip: Strip, goOn: GoOn): void {
    const worthwhile = strip.level - FRONTIER_TOLERANCE
    const question = this.trade.question(strip.weights, strip)
    // A bound at the level is proof enough: whatever is left to look at is no better.
    const isProvedBy = (objective: number) => objective + question.offset >= worthwhile
    const outcome = searchFor(question, (progress) => !isProvedBy(progress.bound) && goOn(progress))
    if ('shares' in outcome && outcome.value < worthwhile) return this.#improve(outcome.shares)
    this.#settled.add(strip)
    const bound = 'bound' in outcome ? outcome.bound : Infinity
    if (bound < worthwhile) this.#giveUp(strip, strip.level - bound)
  }

  /** Takes in the slice of a blend found below the frontier. */
  #improve(shares: Float64Array): void {
    const { u, v } = this.trade.pointOf(shares)
    this.#take(shares)
    // A slice that does not reach its own blend would be met again for ever.
    if (heightOf(this.#envelope, u + FRONTIER_TOLERANCE) > v + FRONTIER_TOLERANCE) {
      throw new AccuracyError(
        `A blend below a frontier, at ${u} and ${v} of it, is not on its slice.`,
      )
    }
  }

  #giveUp({ from, to }: Strip, gap: number): void {
    const ends = [from, to].map((u) => (Math.abs(u) === Infinity ? null : this.trade.firstOf(u)))
    this.#unproved.push({ from: ends[0] ?? null, to: ends[1] ?? null, gap })
  }

  #told(): RuledFrontier {
    const { vertices, facets } = chained(this.#envelope)
    const supported = hullCorners(this.#envelope)
    const { check } = this.trade.space
    return {
      status: this.#unproved.length === 0 ? 'optimal' : 'feasible',
      axes: this.trade.axes,
      vertices: vertices.map(({ point, isOpen }) => ({
        measures: this.trade.measuresOf(point),
        blend: checkedBlend(check, point.shares),
        isSupported: !isOpen && supported.some((corner) => isNear(corner, point)),
        isOpen,
      })),
      facets,
      tolerance: FRONTIER_TOLERANCE,
      unproved: this.#unproved,
      gap: Math.max(0, ...this.#unproved.map(({ gap }) => gap)),
    }
  }
}

function isNear(a: TradePoint, b: TradePoint): boolean {
  return Math.max(Math.abs(a.u - b.u), Math.abs(a.v - b.v)) <= FRONTIER_TOLERANCE
}

interface Chained {
  readonly vertices: { readonly point: TradePoint; readonly isOpen: boolean }[]
  readonly facets: number[][]
}

/** The pieces as numbered vertices and facets; neighbours of one slice share a vertex. */
function chained(envelope: readonly Piece[]): Chained {
  const done: Chained = { vertices: [], facets: [] }
  for (const { from, to, isOpen } of envelope) {
    if (done.vertices.at(-1)?.point !== from) done.vertices.push({ point: from, isOpen: false })
    const start = done.vertices.length - 1
    if (from === to) done.facets.push([start])
    else {
      done.vertices.push({ point: to, isOpen })
      done.facets.push([start, start + 1])
    }
  }
  return done
}
