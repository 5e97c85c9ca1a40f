import { z } from 'zod'
import { batchFile } from './batch-file'
import { costChoices, pricesOn } from './cost-shape'
import { priceBookShape } from './price-book-file'

/** The file format of a bar’s cost, version 1. */
export const costFile = z.strictObject({
  format: z.literal('barwright-cost/1'),
  on: pricesOn,
  batch: batchFile.describe('What is made, as in a file of its own'),
  prices: priceBookShape.describe('The price book'),
  work: costChoices.describe('Work, overhead, wrapping and losses'),
  batches: z.int().min(1).max(400).default(1).describe('Batches bought and made for at once'),
})
