import { type Blend, normalised, totalChange } from '../../blend/blend'
import { checkBlend, type Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { blendValue } from '../../blend/values'
import { type Brief, pricesOf } from '../brief/brief'
import { prepared } from './prepare'
import { type PricePiece, type PricePieces, pricePieces } from './price-pieces'

/** One oil's price, moved. */
export interface PriceWalkOrder {
  readonly oil: string
  /** How far the price moves from what it is, as a part of it: -0.5 to 2 is half less to three times. */
  readonly fromChange: number
  readonly toChange: number
  /** The formula in use, whose oils all have prices; the cheapest at today's prices if left out. */
  readonly hold?: Blend | undefined
}

/** What a move of the price does, with the formula in use kept or changed. */
export interface PriceWalk {
  readonly status: 'found'
  readonly oil: string
  /** Today's price, money per kg. */
  readonly price: number
  readonly pieces: readonly PricePiece[]
  /** The prices at which the cheapest blend switches to another, money per kg. */
  readonly switches: readonly number[]
  /** The formula in use and what it costs at the two ends; straight between them. */
  readonly held: PricePiece
  /** The price above which even the cheapest blend costs more than was wished; null where it never does. */
  readonly overWishAbove: number | null
}

/** What came of it, or why nothing did. */
export type PriceWalkAnswer =
  | PriceWalk
  | Exclude<PricePieces, { status: 'found' }>
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Blends nearer than this are one, in percentage points of total change. */
const SAME_BLEND_POINTS = 1e-6

/**
 * The cheapest blend at every price of one oil, the prices at which it switches, and what holding the
 * formula in use would cost; all other prices stay. Rules of the brief are kept.
 */
export function priceWalk(brief: Brief, library: Library, order: PriceWalkOrder): PriceWalkAnswer {
  const ready = prepared(brief, library)
  if (ready.status === 'invalid') return ready
  const problems = orderProblems(brief, library, order)
  if (problems.length > 0) return { status: 'invalid', problems }
  const price = brief.oils[order.oil]?.pricePerKg ?? NaN
  const [from, to] = [price * (1 + order.fromChange), price * (1 + order.toChange)]
  const found = pricePieces(ready.brief, library, order.oil, from, to)
  if (found.status !== 'found') return found
  const { pieces } = found
  const now = order.hold ?? blendAt(pieces, price)
  return {
    status: 'found',
    oil: order.oil,
    price,
    pieces,
    switches: switchesOf(pieces),
    held: heldPiece(normalised(now), brief, library, order.oil, from, to),
    overWishAbove: overWishAbove(pieces, ready.costMost),
  }
}

/** The least cost at a price on the walk, money per kg. */
export function bestCostAt({ pieces }: Pick<PriceWalk, 'pieces'>, price: number): number {
  const piece = pieces.find(({ to }) => price <= to) ?? pieces.at(-1)
  return piece ? costOn(piece, price) : NaN
}

/** Cost of a piece's blend at any price, also beyond its ends; money per kg. */
export function costOn({ from, to, costAtFrom, costAtTo }: PricePiece, price: number): number {
  return costAtFrom + ((costAtTo - costAtFrom) * (price - from)) / (to - from)
}

function blendAt(pieces: readonly PricePiece[], price: number): Blend {
  const piece = pieces.find(({ to }) => price <= to) ?? pieces.at(-1)
  if (piece) return piece.blend
  throw new Error('A walk without pieces has no blend')
}

function switchesOf(pieces: readonly PricePiece[]): number[] {
  return pieces.slice(1).flatMap((piece, index) => {
    const before = pieces[index]
    const isSame = before && totalChange(before.blend, piece.blend) <= SAME_BLEND_POINTS
    return isSame ? [] : [piece.from]
  })
}

function heldPiece(
  blend: Blend,
  brief: Brief,
  library: Library,
  oil: string,
  from: number,
  to: number,
): PricePiece {
  const costAt = (price: number) =>
    blendValue(library, { ...pricesOf(brief), [oil]: price }, COST, blend)
  return {
    from,
    to,
    blend,
    sharePercent: blend[oil] ?? 0,
    costAtFrom: costAt(from),
    costAtTo: costAt(to),
  }
}

/** Cost rises with the price, so it passes a limit once at most. */
function overWishAbove(pieces: readonly PricePiece[], most: number | undefined): number | null {
  const over = most === undefined ? undefined : pieces.find(({ costAtTo }) => costAtTo > most)
  if (!over || most === undefined) return null
  const { from, to, costAtFrom, costAtTo } = over
  if (costAtFrom >= most) return from
  return from + ((most - costAtFrom) * (to - from)) / (costAtTo - costAtFrom)
}

function orderProblems(brief: Brief, library: Library, order: PriceWalkOrder): Problem[] {
  const { oil, fromChange, toChange, hold } = order
  const price = Object.hasOwn(brief.oils, oil) ? brief.oils[oil]?.pricePerKg : undefined
  const problems: Problem[] = []
  if (!Object.hasOwn(brief.oils, oil))
    problems.push({
      path: 'oil',
      message: `"${oil}" is not on the shelf. Name one of ${Object.keys(brief.oils).join(', ')}.`,
    })
  else if (price === undefined || !(price > 0))
    problems.push({
      path: `oils.${oil}.pricePerKg`,
      message: `"${oil}" costs ${price ?? 'nothing known'}. A change in percent needs a price above 0.`,
    })
  if (!(fromChange >= -1 && toChange > fromChange && toChange < Infinity))
    problems.push({
      path: 'from',
      message: `The price cannot go from ${fromChange} to ${toChange} as a part of itself. Start at -1 or more, and end above that.`,
    })
  return hold ? [...problems, ...holdProblems(brief, library, hold)] : problems
}

function holdProblems(brief: Brief, library: Library, hold: Blend): Problem[] {
  const prices = pricesOf(brief)
  const unpriced = Object.keys(hold).filter((oil) => !Object.hasOwn(prices, oil))
  return [
    ...checkBlend(hold, library, 'hold'),
    ...unpriced.map((oil) => ({
      path: `hold.${oil}`,
      message: `"${oil}" has no price in the brief, so holding the formula has no cost. Put it on the shelf with a price.`,
    })),
  ]
}
