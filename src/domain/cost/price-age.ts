import type { Offer, PriceBook } from './offer'

/** How far a price can be trusted by its age. */
export type PriceAge = 'fresh' | 'ageing' | 'old'

/**
 * Days until a price is ageing, and until it is old: an assumption. Suppliers' lists commonly hold for a
 * season, and after a year hardly any does.
 */
export const PRICE_AGE_DAYS = { ageing: 90, old: 365 } as const

const MS_PER_DAY = 86_400_000

/** Whole days from one day (YYYY-MM-DD) to another; below zero where the second is the earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / MS_PER_DAY)
}

/** Age of a price on a day, by whole days. */
export function priceAge(
  offer: Offer,
  on: string,
): { readonly days: number; readonly age: PriceAge } {
  const days = daysBetween(offer.on, on)
  const age =
    days >= PRICE_AGE_DAYS.old ? 'old' : days >= PRICE_AGE_DAYS.ageing ? 'ageing' : 'fresh'
  return { days, age }
}

/** The pack that an offer is a price of: offers of one pack are its history. */
export function packOf({ material, supplier, size, unit }: Offer): string {
  return JSON.stringify([material, supplier.trim().toLowerCase(), size, unit])
}

/**
 * The prices in force on a day: of every pack the latest that is not after it. Of two on the same day the
 * later in the book stands.
 */
export function currentOffers({ offers }: Pick<PriceBook, 'offers'>, on: string): Offer[] {
  const latest = new Map<string, Offer>()
  for (const offer of offers) {
    if (offer.on > on) continue
    const before = latest.get(packOf(offer))
    if (!before || before.on <= offer.on) latest.set(packOf(offer), offer)
  }
  return offers.filter((offer) => latest.get(packOf(offer)) === offer)
}

/** All prices of the same pack, the oldest first. */
export function historyOf({ offers }: Pick<PriceBook, 'offers'>, of: Offer): Offer[] {
  return offers
    .filter((offer) => packOf(offer) === packOf(of))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
}
