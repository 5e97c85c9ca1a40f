import { percentFromFraction } from '../units'
import { type Cover, stepChoices } from './cover'
import type { Offer } from './offer'
import type { Supply } from './supply'

/** A larger purchase of one material that comes cheaper by weight. */
export interface BetterSize {
  readonly offer: Offer
  readonly packs: number
  /** In g or pieces. */
  readonly amount: number
  readonly minor: number
  /** On top of what the list pays now, minor units. */
  readonly moreMinor: number
  /** Beyond what the list buys, g or pieces. */
  readonly moreAmount: number
  /** How much less a g or piece costs, percent. */
  readonly savesPercent: number
  /** It pays once so much of it is used: what its money would have bought at the list's price. */
  readonly paysFromAmount: number
}

/** Savings below this are not worth a hint, percent. */
const LEAST_SAVING_PERCENT = 2

/** A hint asks for no more than this many times the money of the list. */
const MOST_TIMES = 6

/**
 * The next better size: of all single offers and steps that cover the need at a price by weight clearly
 * below the list's, the one that costs least more. Null where there is none.
 */
export function betterSize(
  supplies: readonly Supply[],
  cover: Cover,
  need: number,
): BetterSize | null {
  if (!(cover.amount > 0)) return null
  const paid = cover.minor / cover.amount
  const sizes = stepChoices(supplies, need).flatMap((choice): BetterSize[] => {
    const supply = supplies[choice.offer]
    const packs = choice.most
    const amount = packs * choice.amount
    const minor = packs * choice.packMinor
    const savesPercent = percentFromFraction(1 - minor / amount / paid)
    const larger = amount > cover.amount && minor > cover.minor && minor <= MOST_TIMES * cover.minor
    if (!supply || !larger || savesPercent < LEAST_SAVING_PERCENT) return []
    return [
      {
        offer: supply.offer,
        packs,
        amount,
        minor,
        moreMinor: minor - cover.minor,
        moreAmount: amount - cover.amount,
        savesPercent,
        paysFromAmount: minor / paid,
      },
    ]
  })
  return sizes.sort((a, b) => a.moreMinor - b.moreMinor)[0] ?? null
}
