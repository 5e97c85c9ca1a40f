import { z } from 'zod'
import type { CostChoices } from '../domain/cost/run-cost'
import { batchFile } from './batch-file'
import { minor, priceBookShape } from './price-book-file'

/** How a batch is turned into money, as it stands in a file; money in whole minor units. */
export const costChoices = z.strictObject({
  charge: z
    .enum(['proRata', 'boughtLessLeftovers', 'allBought'])
    .default('proRata')
    .describe(
      'Materials as if packs could be parted; what must be bought less leftovers; or all that must be bought',
    ),
  wastePercent: z.number().default(0).describe('Lost before the pot, percent of what is bought'),
  packaging: z
    .array(z.strictObject({ material: z.string(), perBar: z.number() }))
    .readonly()
    .default([])
    .describe('What goes onto every good bar: pieces, or g'),
  minutesPerBatch: z.number().default(0),
  minutesPerBar: z.number().default(0).describe('For every bar cut'),
  rateMinorPerHour: minor.default(0),
  overheadMinorPerBatch: minor.default(0),
  overheadMinorPerMonth: minor.default(0),
  batchesPerMonth: z.number().default(1),
  rejectPercent: z.number().default(0).describe('Bars that can’t be sold, percent of those cut'),
})

/** Day that prices are looked up on. */
export const pricesOn = z
  .string()
  .optional()
  .describe('Day the prices are looked up on, YYYY-MM-DD; today if left out')

/** The file format of a bar’s cost, version 1. */
export const costFile = z.strictObject({
  format: z.literal('barwright-cost/1'),
  on: pricesOn,
  batch: batchFile.describe('What is made, as in a file of its own'),
  prices: priceBookShape.describe('The price book'),
  work: costChoices.describe('Work, overhead, wrapping and losses'),
  batches: z.int().min(1).max(400).default(1).describe('Batches bought and made for at once'),
})

/** The choices of a parsed file. */
export function choicesOf(parsed: z.output<typeof costChoices>): CostChoices {
  return parsed
}
