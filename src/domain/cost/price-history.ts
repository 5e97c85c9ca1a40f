import { type PricePoint, yearlyLogSpread } from './price-spread'
import { GRAMS_PER_KG } from '../units'
import { landedSteps, type MaterialOf, type Offer, packAmount, type PriceBook } from './offer'
import { historyOf, packOf } from './price-age'

/**
 * The yearly log spread of each material that the book has enough history of (`yearlyLogSpread`), by id:
 * all its packs together, each at the price of its smallest order.
 */
export function spreadsIn(
  book: PriceBook,
  materials: readonly string[],
  materialOf: MaterialOf,
): Readonly<Record<string, number>> {
  const spreads: Record<string, number> = {}
  for (const material of materials) {
    const spread = yearlyLogSpread(historiesOf(book, material, materialOf))
    if (spread !== undefined) spreads[material] = spread
  }
  return spreads
}

function historiesOf(book: PriceBook, material: string, materialOf: MaterialOf): PricePoint[][] {
  const offers = book.offers.filter((offer) => offer.material === material)
  const packs = new Map(offers.map((offer) => [packOf(offer), offer]))
  return [...packs.values()].map((offer) =>
    historyOf(book, offer).flatMap((one) => pointOf(one, book, materialOf)),
  )
}

function pointOf(offer: Offer, book: PriceBook, materialOf: MaterialOf): PricePoint[] {
  const amount = packAmount(offer, materialOf(offer.material))
  const packMinor = landedSteps(offer, book)?.[0]?.packMinor
  if (offer.unit === 'piece' || amount === undefined || packMinor === undefined || packMinor <= 0)
    return []
  return [{ on: offer.on, pricePerKg: (packMinor * GRAMS_PER_KG) / amount }]
}
