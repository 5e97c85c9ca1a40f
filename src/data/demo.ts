import { z } from 'zod'
import file from '../../data/demo.json'

const limit = z.number().optional()

const demoFile = z.strictObject({
  note: z.string(),
  name: z.string(),
  currency: z.string().length(3),
  shelf: z.array(
    z.strictObject({
      oil: z.string(),
      pricePerKg: limit,
      min: limit,
      max: limit,
      banned: z.boolean().default(false),
    }),
  ),
  wishes: z.record(z.string(), z.strictObject({ min: limit, max: limit })),
  goal: z.union([
    z.strictObject({ minimise: z.string() }),
    z.strictObject({ maximise: z.string() }),
    z.strictObject({ closestTo: z.record(z.string(), z.number()) }),
  ]),
  axes: z.tuple([z.string(), z.string()]),
  batch: z.strictObject({
    oilGrams: z.number(),
    alkali: z.enum(['naoh', 'koh']),
    purity: z.strictObject({ naoh: z.number(), koh: z.number() }),
    superfatPercent: z.number(),
    water: z.strictObject({ lyeConcentration: z.number() }),
    scale: z.strictObject({ oilStepG: z.number(), lyeStepG: z.number() }),
  }),
})

/** What a first visit opens on: an invented scenario. */
export const demo = demoFile.parse(file)
