import { z } from 'zod'
import { amount, MOST_MINUTES, percentOfMoney, within } from './bounds'
import { minor } from './price-book-file'

/** How a batch is turned into money, as it stands in a file; money in whole minor units. */
export const costChoices = z.strictObject({
  charge: z
    .enum(['proRata', 'boughtLessLeftovers', 'allBought'])
    .default('proRata')
    .describe(
      'Materials as if packs could be parted; what must be bought less leftovers; or all that must be bought',
    ),
  wastePercent: percentOfMoney
    .default(0)
    .describe('Lost before the pot, percent of what is bought'),
  packaging: z
    .array(z.strictObject({ material: z.string(), perBar: amount }))
    .readonly()
    .default([])
    .describe('What goes onto every good bar: pieces, or g'),
  minutesPerBatch: within(MOST_MINUTES).default(0),
  minutesPerBar: within(MOST_MINUTES).default(0).describe('For every bar cut'),
  rateMinorPerHour: minor.default(0),
  overheadMinorPerBatch: minor.default(0),
  overheadMinorPerMonth: minor.default(0),
  batchesPerMonth: within(MOST_MINUTES).default(1),
  rejectPercent: percentOfMoney
    .default(0)
    .describe('Bars that can’t be sold, percent of those cut'),
})

/** Day that prices are looked up on. */
export const pricesOn = z
  .string()
  .optional()
  .describe('Day the prices are looked up on, YYYY-MM-DD; today if left out')
