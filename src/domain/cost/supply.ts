import {
  type LandedStep,
  landedSteps,
  type MaterialOf,
  type Offer,
  packAmount,
  type PriceBook,
} from './offer'
import { currentOffers } from './price-age'

/** An offer in force, as it is bought. */
export interface Supply {
  readonly offer: Offer
  /** In g, or in pieces. */
  readonly amount: number
  readonly steps: readonly LandedStep[]
}

/** Why an offer, or a material without any, can't be bought by the book. */
export interface NoSupply {
  readonly material: string
  readonly message: string
}

/** What can be bought of a material, and what stands in the way of the rest. */
export interface Supplies {
  readonly supplies: readonly Supply[]
  readonly missing: readonly NoSupply[]
}

/** What can be bought of a material at the prices of a day. */
export function suppliesOf(
  material: string,
  book: PriceBook,
  materialOf: MaterialOf,
  on: string,
): Supplies {
  const fact = materialOf(material)
  const name = fact?.name ?? material
  const offers = currentOffers(book, on).filter((offer) => offer.material === material)
  if (offers.length === 0)
    return {
      supplies: [],
      missing: [{ material, message: `${name} has no price. Add a pack to the price book.` }],
    }
  const missing: NoSupply[] = []
  const supplies = offers.flatMap((offer): Supply[] => {
    const amount = packAmount(offer, fact)
    const steps = landedSteps(offer, book)
    if (amount !== undefined && steps !== undefined) return [{ offer, amount, steps }]
    const message =
      amount === undefined
        ? `${name} is sold by volume (${offer.size} ${offer.unit}) and has no density. Give it in g/ml, or the pack by weight.`
        : `${name} of ${offer.supplier} is priced in ${offer.currency}. Give its rate to ${book.currency}.`
    missing.push({ material, message })
    return []
  })
  return { supplies, missing }
}
