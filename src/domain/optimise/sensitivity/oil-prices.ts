import { COST } from '../../blend/measure'
import { percentFromFraction, WHOLE_PERCENT } from '../../units'
import type { BlendSpace } from '../space/blend-space'
import { toleranceOn } from '../space/verify'
import { firstPiece, type Piece, type Slide } from './pieces'
import { NOISE_PART } from '../../noise'

/** Why an oil comes in at no price: its own limit bars it, no blend has room for it, or it saves nothing. */
export type NoPrice = 'own limit' | 'no blend' | 'no saving'

/** An oil that the best blend leaves out. */
export interface OilOut {
  readonly oil: string
  /**
   * Below this price every best blend has some of the oil, and above it the present blend stays best;
   * money per kg. Null where no price of 0 or more brings it in.
   */
  readonly entersBelowPricePerKg: number | null
  /** Given with null only. */
  readonly atNoPrice?: NoPrice
}

/** An oil of the best blend. */
export interface OilIn {
  readonly oil: string
  /**
   * From the least to the highest price of this oil at which the present blend stays a best one, all
   * other prices unchanged, in money per kg. Null where no price of 0 or more, however low or high,
   * changes it.
   */
  readonly priceSpan: readonly [number | null, number | null]
}

/** What the prices of the oils decide. */
export interface OilPrices {
  readonly oilsOut: readonly OilOut[]
  readonly oilsIn: readonly OilIn[]
}

/**
 * Steps of a share below this are rounding, in percent: a milligram in a kilogram. The solver keeps rows
 * to 1e-10 of their size, so a hundred times less could be neither reached nor ruled out.
 */
const GRAIN_PERCENT = 1e-4

/** Shares up to this are no oil in the pot: too little to be taken away by a grain or two. */
const TRACE_PERCENT = 2 * GRAIN_PERCENT

/**
 * The prices at which oils would come in, and those for which the blend stays, for a feasible space
 * whose goal is the least cost; `shares` is the best blend that is talked about, in percent.
 *
 * With one oil's share held at t, let W(t) be the least cost of the others: convex and piecewise linear.
 * The blend with share s stays best while −price lies between the slopes of W on the left and the right
 * of s. So both prices are one-sided slopes of W, true also for degenerate optima and alternative best
 * blends, where the reduced cost of one basis gives only a bound.
 *
 * A wish on cost would move with the prices; it is set aside, and a span ends where the present blend
 * would pass it. Expects that its least is not what decides the answer. The space's cost is changed.
 */
export function oilPrices(space: BlendSpace, shares: ArrayLike<number>): OilPrices {
  space.limit(COST, {})
  const oilsOut: OilOut[] = []
  const oilsIn: OilIn[] = []
  space.oils.forEach((oil, index) => {
    const share = shares[index] ?? 0
    if (share <= TRACE_PERCENT) oilsOut.push(oilOut(space, oil, index))
    else oilsIn.push({ oil, priceSpan: priceSpan(space, shares, index) })
  })
  space.restore(COST)
  return { oilsOut, oilsIn }
}

function oilOut(space: BlendSpace, oil: string, index: number): OilOut {
  const none = (atNoPrice: NoPrice): OilOut => ({ oil, entersBelowPricePerKg: null, atNoPrice })
  const { upper } = boundsOf(space, index)
  if (upper <= TRACE_PERCENT) return none('own limit')
  const piece = othersCost(space, index, 0, upper)
  if (!piece) return none('no blend')
  const price = Math.min(-pricePerKg(piece.slope), priceOf(space, index))
  return price > noPrice(space) ? { oil, entersBelowPricePerKg: price } : none('no saving')
}

function priceSpan(
  space: BlendSpace,
  shares: ArrayLike<number>,
  index: number,
): [number | null, number | null] {
  const share = shares[index] ?? NaN
  const { lower, upper } = boundsOf(space, index)
  const price = priceOf(space, index)
  const more = othersCost(space, index, share, upper)
  const less = othersCost(space, index, share, lower)
  const room = roomUnderWish(space, shares, index)
  const from = Math.max(more ? -pricePerKg(more.slope) : -Infinity, price - room.below)
  const to = Math.min(less ? -pricePerKg(less.slope) : Infinity, price + room.above)
  return [
    from > noPrice(space) ? Math.min(from, price) : null,
    to < Infinity ? Math.max(to, price) : null,
  ]
}

/** First piece of the least cost of the other oils as this oil's share moves from one value to another. */
function othersCost(space: BlendSpace, index: number, from: number, to: number): Piece | undefined {
  const rest = boundsOf(space, index)
  const owner = { kind: 'variable', index } as const
  const slide: Slide = { owner, end: 'both', rest, grain: GRAIN_PERCENT }
  const cost = space.perPercent(COST).slice()
  cost[index] = 0
  space.simplex.setCost(cost)
  return firstPiece(space, slide, from, to)
}

/** How far the price may fall and rise before the present blend passes a wish on cost; money per kg. */
function roomUnderWish(space: BlendSpace, shares: ArrayLike<number>, index: number) {
  const { min = -Infinity, max = Infinity } = space.brief.measures[COST] ?? {}
  const cost = space.perPercent(COST).reduce((sum, one, oil) => sum + one * (shares[oil] ?? 0), 0)
  const perMoney = WHOLE_PERCENT / (shares[index] ?? NaN)
  return {
    below: Math.max(0, cost - min) * perMoney,
    above: Math.max(0, max - cost) * perMoney,
  }
}

/** Whether the answer stands at the least that cost was wished to be; then prices decide nothing by themselves. */
export function isCostHeldUp({ brief }: BlendSpace, cost: number): boolean {
  const min = brief.measures[COST]?.min
  return min !== undefined && cost - min <= toleranceOn(COST, cost)
}

function boundsOf({ brief, oils }: BlendSpace, index: number) {
  const { min = 0, max = WHOLE_PERCENT } = brief.oils[oils[index] ?? ''] ?? {}
  return { lower: min, upper: max }
}

/** A cost per percent of share as money per kg of the oil. */
function pricePerKg(costPerPercent: number): number {
  return percentFromFraction(costPerPercent)
}

/** A price up to this is the rounding of 0; money per kg. */
function noPrice(space: BlendSpace): number {
  return NOISE_PART * space.oils.reduce((most, _, oil) => Math.max(most, priceOf(space, oil)), 0)
}

function priceOf({ brief, oils }: BlendSpace, index: number): number {
  return brief.oils[oils[index] ?? '']?.pricePerKg ?? NaN
}
