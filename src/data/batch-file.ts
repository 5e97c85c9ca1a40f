import { z } from 'zod'
import type { BatchOrder } from '../domain/batch/order'
import { found } from './problems'

const WATER_FORMS =
  'Give one of { "lyeConcentration": percent }, { "ratio": g water per g hydroxide } or { "percentOfOils": percent }.'

const perAlkali = z.strictObject({ naoh: z.number().optional(), koh: z.number().optional() })

/** The file format of a batch order, version 1; shares, purities and superfat in percent. */
export const batchFile = z.strictObject({
  format: z.literal('barwright-batch/1'),
  blend: z
    .record(z.string(), z.number())
    .describe('Share of each oil in percent of oil weight, adding to 100'),
  oilGrams: z.number().optional().describe('Weight of all oils in g; or give a mould'),
  mould: z
    .strictObject({
      volumeMl: z.number(),
      fillPercent: z.number().optional(),
      densityGPerMl: z.number().optional(),
    })
    .optional()
    .describe('Volume to fill; fill is 100 % and batter density 1.03 g/ml where left out'),
  alkali: perAlkali.describe('Percent of the fat that each alkali turns to soap, by mol'),
  purity: perAlkali
    .default({})
    .describe('Percent of pure alkali in what is weighed; 100 if left out'),
  superfat: z.number().describe('Lye discount in percent'),
  water: z
    .union(
      [
        z.strictObject({ lyeConcentration: z.number() }),
        z.strictObject({ ratio: z.number() }),
        z.strictObject({ percentOfOils: z.number() }),
      ],
      { error: ({ input }) => `${found(input)} ${WATER_FORMS}` },
    )
    .describe('Percent hydroxide in the lye, g water per g hydroxide, or percent of oils'),
  scale: z
    .strictObject({ oilStepG: z.number(), lyeStepG: z.number() })
    .optional()
    .describe('Smallest steps of the scales in g; exact weights if left out'),
})

/** A batch order as it stands in a file. */
export type BatchFile = z.input<typeof batchFile>

/** The order of a parsed file. */
export function orderOf({ format: _, ...order }: z.output<typeof batchFile>): BatchOrder {
  return order
}
