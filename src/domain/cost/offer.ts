import { gramsFrom, ML_PER_LITRE, WHOLE_PERCENT } from '../units'
import { minorDigits, roundMinor } from './money'
import type { PackUnit } from './pack'

/** Units that things are bought in: by weight, by volume, or by the piece. */
export type OfferUnit = PackUnit | 'piece'

/** From so many packs on, every pack of the order costs this much. */
export interface PriceStep {
  readonly fromPacks: number
  /** Of one pack, in minor units of the offer's currency, with or without tax as the offer says. */
  readonly priceMinor: number
}

/** A pack as one supplier sells it, at the prices of one day. A later one of the same pack replaces it. */
export interface Offer {
  readonly id: string
  /** Id of an oil, alkali, scent, additive, liquid or acid of the library, or of the maker's own. */
  readonly material: string
  readonly supplier: string
  readonly size: number
  readonly unit: OfferUnit
  /** In order of `fromPacks`; the first says the fewest packs that are sold. */
  readonly steps: readonly PriceStep[]
  /** ISO 4217; the book's where left out. */
  readonly currency?: string | undefined
  /** Value added or sales tax, percent, and whether the prices have it in them; none where left out. */
  readonly tax?: { readonly percent: number; readonly included: boolean } | undefined
  /** This pack's share of freight, minor units of the offer's currency, without tax. */
  readonly freightMinor?: number | undefined
  /** The day the price was seen, YYYY-MM-DD. */
  readonly on: string
}

/** What a supplier asks for an order, in minor units of the book's currency. */
export interface SupplierTerms {
  readonly supplier: string
  /** Freight of one order; free where left out. */
  readonly freightMinor?: number | undefined
  /** Goods of this much are sent free. */
  readonly freeFromMinor?: number | undefined
  /** No order below this much of goods. */
  readonly leastOrderMinor?: number | undefined
  /** Days until it is delivered. */
  readonly deliveryDays?: number | undefined
}

/** A thing of the maker's own that the library does not hold: cartons, labels, a fragrance. */
export interface OwnMaterial {
  readonly id: string
  readonly name: string
  readonly densityGPerMl?: number | undefined
}

/** All prices of a maker. */
export interface PriceBook {
  /** ISO 4217: what everything is reckoned in. */
  readonly currency: string
  /** Whether the maker gets the tax on purchases back. */
  readonly taxBack: boolean
  /** By currency: how much of the book's currency one unit of it is worth. */
  readonly rates: Readonly<Record<string, number>>
  readonly materials: readonly OwnMaterial[]
  readonly suppliers: readonly SupplierTerms[]
  readonly offers: readonly Offer[]
}

/** What is known of a material, by id. */
export interface MaterialFact {
  readonly name: string
  /** Needed where it is sold by volume; g/ml. */
  readonly densityGPerMl?: number | undefined
}

/** Looks a material up; undefined for an id that nobody knows. */
export type MaterialOf = (id: string) => MaterialFact | undefined

/** A step as it is paid: whole minor units of the book's currency for one pack, tax and freight share in. */
export interface LandedStep {
  readonly fromPacks: number
  readonly packMinor: number
}

/**
 * What one pack holds, in g, or in pieces where it is sold so; undefined where a volume meets a material of
 * unknown density.
 */
export function packAmount({ size, unit }: Offer, fact: MaterialFact | undefined) {
  if (unit === 'piece') return size
  if (unit !== 'ml' && unit !== 'l') return gramsFrom(size, unit)
  const density = fact?.densityGPerMl
  return density === undefined ? undefined : size * (unit === 'l' ? ML_PER_LITRE : 1) * density
}

/**
 * What a pack costs at each step: the price, tax taken out where the maker gets it back and put on where
 * not, turned into the book's currency, with its share of freight. Rounded once, a pack; undefined where a
 * rate is missing.
 */
export function landedSteps(offer: Offer, book: PriceBook): LandedStep[] | undefined {
  const rate = rateOf(offer.currency ?? book.currency, book)
  if (rate === undefined) return undefined
  const { tax, freightMinor = 0 } = offer
  const part = tax ? tax.percent / WHOLE_PERCENT : 0
  const net = tax?.included ? 1 / (1 + part) : 1
  const paid = book.taxBack ? 1 : 1 + part
  return offer.steps.map(({ fromPacks, priceMinor }) => ({
    fromPacks,
    packMinor: roundMinor((priceMinor * net + freightMinor) * paid * rate),
  }))
}

/** Minor units of the book's currency for one minor unit of another; undefined where no rate is given. */
function rateOf(currency: string, book: PriceBook): number | undefined {
  if (currency === book.currency) return 1
  const rate = book.rates[currency]
  if (rate === undefined) return undefined
  return rate * 10 ** (minorDigits(book.currency) - minorDigits(currency))
}

/** What an order of so many packs costs, in minor units; undefined below the fewest that are sold. */
export function orderMinor(steps: readonly LandedStep[], packs: number): number | undefined {
  const step = steps.findLast(({ fromPacks }) => packs >= fromPacks)
  return step && packs * step.packMinor
}
