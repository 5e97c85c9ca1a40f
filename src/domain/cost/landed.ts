import { WHOLE_PERCENT } from '../units'
import { type Cover, cheapestCover } from './cover'
import { roundMinor } from './money'
import type { Supply } from './supply'

/** How a need is turned into money. */
export interface LandedChoices {
  /** Lost before it reaches the pot: spilt, left in the drum, past its date; percent of what is bought. */
  readonly wastePercent?: number | undefined
  /** Whether what is left over counts as worth what was paid for it, or as lost. */
  readonly leftovers: 'valued' | 'lost'
}

/** What a needed quantity of one material costs. Amounts in g or pieces, money in minor units. */
export interface LandedCost {
  readonly need: number
  /** With the waste. */
  readonly gross: number
  /** Unrounded, for one more g or piece in the pot: what the optimiser reckons with. */
  readonly marginalPerUnit: number
  /** The need at that price, as if packs could be parted. */
  readonly proRataMinor: number
  /** What must be bought. */
  readonly cover: Cover
  readonly leftover: number
  readonly leftoverMinor: number
  /** What is charged: all that is bought, less leftovers where they are valued. */
  readonly chargedMinor: number
}

/**
 * The cost of a needed quantity, landed: with tax, freight share and waste. Undefined where nothing can be
 * bought. Leftovers are valued at the average price paid in this purchase.
 */
export function landedCost(
  supplies: readonly Supply[],
  need: number,
  { wastePercent = 0, leftovers }: LandedChoices,
): LandedCost | undefined {
  const gross = grossNeed(need, wastePercent)
  const cover = cheapestCover(supplies, gross)
  const priced = gross > 0 ? cover : cheapestCover(supplies, 1)
  if (!cover || !priced) return undefined
  const leftover = Math.max(0, cover.amount - gross)
  const leftoverMinor = cover.amount > 0 ? roundMinor((cover.minor * leftover) / cover.amount) : 0
  const perUnit = grossNeed(marginalOf(priced), wastePercent)
  return {
    need,
    gross,
    marginalPerUnit: perUnit,
    proRataMinor: roundMinor(perUnit * need),
    cover,
    leftover,
    leftoverMinor,
    chargedMinor: cover.minor - (leftovers === 'valued' ? leftoverMinor : 0),
  }
}

/** What must be bought for a need to reach the pot. */
export function grossNeed(need: number, wastePercent: number): number {
  return need / (1 - wastePercent / WHOLE_PERCENT)
}

/**
 * The price of one more g or piece for a maker who buys about this much: the cheapest by weight of what the
 * cheapest purchase buys, so that a drum nobody would take for so little does not set it. Minor units,
 * unrounded, without waste. A need of 0 is priced as one of a single g or piece.
 */
function marginalOf({ bought }: Cover): number {
  return Math.min(...bought.map(({ minor, amount }) => minor / amount))
}
