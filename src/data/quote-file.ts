import { z } from 'zod'
import { costFile } from './cost-file'
import { quoteChoices, quotePapers } from './quote-shape'

/** The file format of a quote, version 1: a cost’s, with what is asked for it. */
export const quoteFile = costFile.omit({ format: true, batches: true, on: true }).extend({
  format: z.literal('barwright-quote/1'),
  quote: quoteChoices,
  papers: quotePapers,
})
