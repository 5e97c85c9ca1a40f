import { z } from 'zod'
import { amount, MOST_COUNT, MOST_DAYS, MOST_MINOR, percentOfMoney, within } from './bounds'
import type { PriceBook } from '../domain/cost/offer'

/** Whole minor units of a currency: cents, pence, yen. */
export const minor = z.int().min(0).max(MOST_MINOR)

/** Three capital letters, ISO 4217. */
export const currency = z
  .string()
  .regex(/^[A-Z]{3}$/u, 'Give a currency as three capital letters, such as EUR.')

/** A pack with its prices, as it stands in a file. */
export const offerShape = z.strictObject({
  id: z.string().optional(),
  material: z.string().describe('Id of the library, or of one of the materials below'),
  supplier: z.string(),
  size: amount.describe('What one pack holds'),
  unit: z.enum(['g', 'kg', 'oz', 'lb', 'ml', 'l', 'piece']),
  steps: z
    .array(
      z.strictObject({ fromPacks: z.int().min(1).max(MOST_COUNT).default(1), priceMinor: minor }),
    )
    .min(1)
    .readonly()
    .describe('Price of one pack by quantity: from so many packs on, all packs cost this'),
  currency: currency.optional(),
  tax: z
    .strictObject({ percent: percentOfMoney, included: z.boolean() })
    .optional()
    .describe('Tax in percent, and whether the prices have it in them'),
  freightMinor: minor.optional().describe('This pack’s share of freight, without tax'),
  on: z.string().describe('Day the price was seen, YYYY-MM-DD'),
})

/** The parts of a price book; also in files that carry one. */
export const priceBookShape = z.strictObject({
  currency: currency.describe('What everything is reckoned in'),
  taxBack: z.boolean().default(true).describe('Whether tax on purchases is got back'),
  rates: z
    .record(z.string(), within(1e9))
    .default({})
    .describe('By currency: what one unit of it is worth in the book’s currency'),
  materials: z
    .array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        densityGPerMl: within(1000).optional(),
      }),
    )
    .readonly()
    .default([])
    .describe('Things of your own that the library does not hold, such as cartons'),
  suppliers: z
    .array(
      z.strictObject({
        supplier: z.string(),
        freightMinor: minor.optional().describe('Freight of one order'),
        freeFromMinor: minor.optional().describe('Goods of this much are sent free'),
        leastOrderMinor: minor.optional().describe('No order below this much of goods'),
        deliveryDays: within(MOST_DAYS, 1e-3).optional(),
      }),
    )
    .readonly()
    .default([]),
  offers: z
    .array(offerShape)
    .readonly()
    .describe('Packs with their prices. A later day of the same pack replaces an earlier one'),
})

/** The file format of a price book, version 1; money in whole minor units of its currency. */
export const priceBookFile = priceBookShape.extend({ format: z.literal('barwright-prices/1') })

/** A price book as it comes out of a file. */
export type ParsedPrices = z.output<typeof priceBookShape>

/** The price book of a parsed file or part of one; offers without an id get one. */
export function bookOf(parsed: ParsedPrices): PriceBook {
  const { currency: money, taxBack, rates, materials, suppliers, offers } = parsed
  return {
    currency: money,
    taxBack,
    rates,
    materials,
    suppliers,
    offers: offers.map((one, index) => ({ ...one, id: one.id ?? `offer-${index + 1}` })),
  }
}

/** A price book as a file. */
export function bookAsFile(book: PriceBook): z.input<typeof priceBookFile> {
  return { format: 'barwright-prices/1', ...book }
}
