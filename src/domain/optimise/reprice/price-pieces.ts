import type { Blend } from '../../blend/blend'
import { blendValue } from '../../blend/values'
import { COST } from '../../blend/measure'
import type { Library } from '../../blend/library'
import { parametricCost } from '../../lp/simplex/parametric-cost'
import { fractionFromPercent } from '../../units'
import { BlendSpace } from '../space/blend-space'
import { type Brief, pricesOf } from '../brief/brief'
import { statesRules } from '../brief/brief-rules'
import { checkedBlend } from '../space/found'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { PriceSolver } from './price-solver'
import { withPrices } from '../brief/prices'
import { NOISE_PART } from '../../noise'

/** A stretch of one oil's prices over which one blend is the cheapest. */
export interface PricePiece {
  /** Prices of the oil, money per kg. */
  readonly from: number
  readonly to: number
  readonly blend: Blend
  /** Share of the oil in it, percent: its cost rises by that part of the price. */
  readonly sharePercent: number
  /** Cost of the blend at the two prices, money per kg. */
  readonly costAtFrom: number
  readonly costAtTo: number
}

/** The stretches in order, or why there are none. */
export type PricePieces =
  | { readonly status: 'found'; readonly pieces: readonly PricePiece[] }
  | { readonly status: 'infeasible'; readonly conflict: readonly string[] }
  /** Under rules: a search was not settled at this price. */
  | { readonly status: 'undecided'; readonly atPricePerKg: number }

/**
 * The cheapest blend at every price of one oil from `from` to `to` (money per kg), all other prices as
 * stated: the least cost is a concave curve of straight pieces, and between two pieces the blend switches.
 *
 * Without rules by the parametric simplex, one pass over the whole range. With rules the blends are not
 * a convex set, but the least of straight lines is concave all the same: two neighbouring blends' lines
 * are crossed, and a search at the crossing either finds a third below or proves the switch (M. Eisner, D.
 * Severance, J. ACM 23 (1976) 619-635).
 *
 * Expects a brief that `prepared` has made ready.
 */
export function pricePieces(
  brief: Brief,
  library: Library,
  oil: string,
  from: number,
  to: number,
): PricePieces {
  return statesRules(brief)
    ? new Crossings(brief, library, oil).between(from, to)
    : piecesOfLimits(brief, library, oil, from, to)
}

function piecesOfLimits(
  brief: Brief,
  library: Library,
  oil: string,
  from: number,
  to: number,
): PricePieces {
  const at = (price: number) => withPrices(brief, { [oil]: price })
  const space = new BlendSpace(at(from), library)
  const first = space.perPercent(COST)
  const second = new BlendSpace(at(to), library).perPercent(COST)
  const pass = parametricCost(space.simplex, first, second)
  if (pass.status === 'infeasible') {
    const answer = new PriceSolver(brief, library).solve({})
    if (answer.status === 'infeasible') return answer
    throw new UnsoundAnswer('The parametric pass finds no blend, and there is one')
  }
  if (pass.status === 'unbounded')
    throw new UnsoundAnswer('A space of limited shares was called unbounded')
  const priceAt = (weight: number) => from + weight * (to - from)
  const pieces = pass.corners.map((corner) =>
    pieceOf(
      checkedBlend(space.check, corner.x),
      { brief, library, oil },
      priceAt(corner.from),
      priceAt(corner.to),
    ),
  )
  return { status: 'found', pieces }
}

interface Asked {
  readonly brief: Brief
  readonly library: Library
  readonly oil: string
}

function pieceOf(blend: Blend, asked: Asked, from: number, to: number): PricePiece {
  return {
    from,
    to,
    blend,
    sharePercent: blend[asked.oil] ?? 0,
    costAtFrom: costAt(blend, asked, from),
    costAtTo: costAt(blend, asked, to),
  }
}

/** Cost of a blend at a price of the oil, from the prices alone; money per kg. */
function costAt(blend: Blend, { brief, library, oil }: Asked, price: number): number {
  return blendValue(library, { ...pricesOf(brief), [oil]: price }, COST, blend)
}

/** A blend's cost as a line over the price of the oil. */
interface Line {
  readonly blend: Blend
  /** Cost at price 0, and its rise per unit of the price. */
  readonly rest: number
  readonly rise: number
}

/** Finds the lines of the least cost under rules. */
class Crossings {
  readonly #solver: PriceSolver
  readonly #asked: Asked

  constructor(brief: Brief, library: Library, oil: string) {
    this.#solver = new PriceSolver(brief, library)
    this.#asked = { brief, library, oil }
  }

  between(from: number, to: number): PricePieces {
    const [first, last] = [this.#lineAt(from), this.#lineAt(to)]
    if (!('line' in first)) return first
    if (!('line' in last)) return last
    const lines = this.#linesFrom(first.line, last.line, from, to)
    if (!Array.isArray(lines)) return lines
    const ends = [...crossingsOf(lines), to]
    const pieces = lines.map(({ blend }, index) =>
      pieceOf(blend, this.#asked, ends[index - 1] ?? from, ends[index] ?? to),
    )
    return { status: 'found', pieces: pieces.filter((one) => one.to > one.from) }
  }

  /** Lines of the least cost from one to another, both included; one line where they are the same. */
  #linesFrom(
    a: Line,
    b: Line,
    from: number,
    to: number,
  ): Line[] | Exclude<PricePieces, { status: 'found' }> {
    if (a.rise - b.rise <= NOISE_PART * Math.max(1, a.rise)) return [a]
    const price = crossing(a, b)
    if (price - from <= NOISE_PART * (to - from)) return [b]
    if (to - price <= NOISE_PART * (to - from)) return [a]
    const found = this.#lineAt(price)
    if (!('line' in found)) return found
    const { line } = found
    const cost = a.rest + a.rise * price
    if (cost - (line.rest + line.rise * price) <= NOISE_PART * Math.max(1, cost)) return [a, b]
    const before = this.#linesFrom(a, line, from, price)
    if (!Array.isArray(before)) return before
    const after = this.#linesFrom(line, b, price, to)
    return Array.isArray(after) ? [...before, ...after.slice(1)] : after
  }

  #lineAt(price: number): { readonly line: Line } | Exclude<PricePieces, { status: 'found' }> {
    const { oil } = this.#asked
    const answer = this.#solver.solve({ [oil]: price })
    if (answer.status === 'infeasible') return answer
    if (answer.status === 'invalid') throw new Error('The brief was sound at another price')
    if (answer.status !== 'optimal') return { status: 'undecided', atPricePerKg: price }
    const { blend } = answer
    const rise = fractionFromPercent(blend[oil] ?? 0)
    return { line: { blend, rise, rest: costAt(blend, this.#asked, 0) } }
  }
}

function crossing(a: Line, b: Line): number {
  return (b.rest - a.rest) / (a.rise - b.rise)
}

function crossingsOf(lines: readonly Line[]): number[] {
  return lines.slice(1).map((line, index) => crossing(lines[index] ?? line, line))
}
