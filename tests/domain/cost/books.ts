import type { Offer, OfferUnit, PriceBook, PriceStep } from '../../../src/domain/cost/offer'
import { type Supply, suppliesOf } from '../../../src/domain/cost/supply'

/** The day that the tests stand on. */
export const TODAY = '2026-11-25'

/** Packs of a material in a few words: size, unit, price in minor units or steps of it. */
export function offer(
  material: string,
  size: number,
  unit: OfferUnit,
  price: number | readonly PriceStep[],
  rest: Partial<Offer> = {},
): Offer {
  const steps = typeof price === 'number' ? [{ fromPacks: 1, priceMinor: price }] : price
  const { supplier = 'Harbour Oils', on = '2026-11-01' } = rest
  return {
    id: [material, supplier, size, unit, on].join('/'),
    material,
    supplier,
    size,
    unit,
    steps,
    on,
    ...rest,
  }
}

export function bookOf(offers: readonly Offer[], rest: Partial<PriceBook> = {}): PriceBook {
  return {
    currency: 'EUR',
    taxBack: true,
    rates: {},
    materials: [],
    suppliers: [],
    offers,
    ...rest,
  }
}

/** Supplies of the one material that the offers are of. */
export function supplies(
  offers: readonly Offer[],
  rest: Partial<PriceBook> = {},
): readonly Supply[] {
  const material = offers[0]?.material ?? ''
  return suppliesOf(material, bookOf(offers, rest), (id) => ({ name: id }), TODAY).supplies
}

export const KG = 1000
