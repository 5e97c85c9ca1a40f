import { z } from 'zod'
import file from '../../data/demo-ledger.json'
import { costChoices } from './cost-shape'
import { bookOf, priceBookShape } from './price-book-file'
import { quoteChoices } from './quote-shape'

const demoFile = priceBookShape.extend({
  note: z.string(),
  work: costChoices,
  barGrams: z.number(),
  quote: quoteChoices.omit({ quotedOn: true }),
})

const { work, barGrams, quote, ...book } = demoFile.parse(file)

/** An invented price book with work and a quote, to see what the Ledger does. */
export const demoLedger = { book: bookOf(book), work, barGrams, quote }
