import { z } from 'zod'
import { rulesShape } from '../data/brief-file'
import { library } from '../data/library'
import { keptBatch } from './batch-schema'
import { keptLedger } from './ledger-schema'

const limit = z.number().optional()
const limits = { min: limit, max: limit }

const oil = z.string().refine((id) => library.oils.has(id), {
  error: ({ input }) => `There is no oil "${String(input)}" in the library.`,
})
const measure = z.string().refine((id) => library.measures.some((one) => one.id === id), {
  error: ({ input }) => `There is no measure "${String(input)}".`,
})
const blend = z.record(oil, z.number())

const goal = z.union([
  z.strictObject({ minimise: measure }),
  z.strictObject({ maximise: measure }),
  z.strictObject({ closestTo: blend }),
])

const shelfRow = z.strictObject({
  oil,
  pricePerKg: limit,
  pack: z
    .strictObject({ size: limit, unit: z.enum(['g', 'kg', 'oz', 'lb', 'ml', 'l']), price: limit })
    .optional(),
  ...limits,
  banned: z.boolean(),
  lockedAt: limit,
  stock: z.strictObject({ grams: z.number(), use: z.enum(['at most', 'all', 'buy']) }).optional(),
})

/** Rules as a file states them, never changed in place. */
const rules = rulesShape.extend({
  requires: rulesShape.shape.requires.unwrap().readonly().optional(),
  oneOf: z.array(z.array(oil).readonly()).readonly().optional(),
})

const brief = z.strictObject({
  name: z.string(),
  currency: z.string().regex(/^[A-Z]{3}$/u),
  shelf: z.array(shelfRow).readonly(),
  groups: z
    .array(z.strictObject({ name: z.string(), oils: z.array(oil).readonly(), ...limits }))
    .readonly(),
  wishes: z.record(measure, z.strictObject(limits)),
  goal,
  axes: z.tuple([measure, measure]).readonly(),
  formula: z.strictObject({ name: z.string(), blend }).optional(),
  rules: rules.optional(),
  robust: z.boolean().optional(),
})

const candidate = z.strictObject({
  id: z.string(),
  letter: z.string(),
  name: z.string(),
  note: z.string(),
  blend,
  from: z.string(),
})

/**
 * Everything put in, as it is kept between visits. It is strict: what it does not know is not dropped
 * without a word, and whatever names an oil or a measure names one that the library holds. A new part
 * of the work is added here with a default, so that older records still read.
 */
export const keptWork = z.strictObject({
  brief,
  batch: keptBatch,
  bench: z.strictObject({
    candidates: z.array(candidate).readonly(),
    // Always there once read, though text such as a leaving note's has no place for undefined.
    reference: z
      .string()
      .optional()
      .transform((id) => id),
    lettersGiven: z.number().exactOptional(),
    barGrams: z.number().exactOptional(),
  }),
  shelfOrder: z.enum(['share', 'name', 'price']).optional(),
  pasting: z
    .strictObject({
      text: z.string(),
      name: z.string(),
      mixed: z.enum(['rest', 'weights', 'percents']).optional(),
      only: z.boolean(),
    })
    .optional(),
  ledger: keptLedger.optional(),
})

export type KeptWork = z.output<typeof keptWork>

/** The envelope around it; see `WorkRecord`. */
export const keptRecord = z.strictObject({
  format: z.literal('barwright-work/1'),
  id: z.string(),
  at: z.number(),
  work: keptWork,
})
