import { z } from 'zod'
import { MOST_COUNT, MOST_DAYS, MOST_MINUTES, percentOfMoney, within } from './bounds'
import { minor } from './price-book-file'
import { found } from './problems'

const percent = percentOfMoney

/** What a price is meant to earn, as it stands in a file. */
export const aim = z
  .union([z.strictObject({ margin: percent }), z.strictObject({ markup: percent })], {
    error: ({ input }) =>
      `${found(input)} Give { "margin": percent of the price } or { "markup": percent of the cost }.`,
  })
  .describe('What a price earns: margin, percent of the price, or markup, percent of the cost')

/** Prices that are asked, as they stand in a file. */
export const pricePoints = z
  .strictObject({ stepMinor: minor, lessMinor: minor.optional() })
  .describe('Prices asked are whole steps, less a little: 100 less 5 is 4.95, 5.95 …')

/** Who quotes and to whom; printed as it stands. */
export const quotePapers = z.strictObject({
  maker: z.string().describe('Name of the maker, as printed'),
  makerLines: z.array(z.string()).readonly().default([]).describe('Address, mail, tax number'),
  customer: z.string().default(''),
  product: z.string().default(''),
  number: z.string().default('').describe('Number of the quote'),
  terms: z
    .array(z.string())
    .readonly()
    .default([])
    .describe('Terms of payment, delivery and so on'),
})

/** What is settled in a quote; money in whole minor units. */
export const quoteChoices = z.strictObject({
  quantities: z
    .array(z.int().max(MOST_COUNT))
    .min(1)
    .max(100)
    .readonly()
    .describe('Numbers of bars to quote for'),
  aim,
  points: pricePoints.default({ stepMinor: 1 }),
  orderMinor: minor.default(0).describe('Cost of one order, however large'),
  surplus: z
    .enum(['stock', 'charged'])
    .default('stock')
    .describe('Whether bars of the last batch beyond the order are worth their cost, or charged'),
  taxPercent: percent.default(0),
  retail: z.strictObject({ aim, points: pricePoints }).optional(),
  leastBars: z.int().min(1).max(MOST_COUNT).default(1),
  batchesPerWeek: within(MOST_MINUTES).default(1),
  packingDays: within(MOST_DAYS, 1e-3).default(0),
  quotedOn: z.string().describe('Day of the quote, YYYY-MM-DD'),
  validDays: within(MOST_DAYS, 1e-3).default(30),
})

/** What is printed beside the figures. */
export type QuotePapers = z.output<typeof quotePapers>
