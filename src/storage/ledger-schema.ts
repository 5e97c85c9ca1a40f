import { z } from 'zod'
import { costChoices } from '../data/cost-shape'
import { FIELD_NAMES, type PriceField } from '../data/price-fields'
import { offerShape, priceBookShape } from '../data/price-book-file'
import { quoteChoices, quotePapers } from '../data/quote-shape'

const fields = Object.keys(FIELD_NAMES) as [PriceField, ...PriceField[]]

/** What was put into the Ledger, as it is kept between visits. */
export const keptLedger = z.strictObject({
  book: priceBookShape.extend({
    offers: z.array(offerShape.extend({ id: z.string() })).readonly(),
  }),
  work: costChoices,
  barGrams: z.number(),
  unit: z.enum(['bar', 'batch', 'kg']),
  buying: z.strictObject({
    times: z.number(),
    runs: z
      .array(
        z.strictObject({
          id: z.string(),
          name: z.string(),
          times: z.number(),
          needs: z.record(z.string(), z.number()),
        }),
      )
      .readonly(),
    stock: z.record(z.string(), z.number()),
  }),
  quote: quoteChoices.extend({ quotedOn: z.string().optional() }),
  papers: quotePapers,
  pasting: z
    .strictObject({
      text: z.string(),
      columns: z.array(z.enum(fields).nullable()).readonly().optional(),
      decimal: z.enum(['point', 'comma']).optional(),
      dayFirst: z.boolean().optional(),
      takeUnknown: z.boolean().optional(),
      supplier: z.string().optional(),
    })
    .optional(),
})
