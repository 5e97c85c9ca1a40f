import { z } from 'zod'
import { rulesShape } from '../data/brief-file'
import { library } from '../data/library'
import { WHOLE_PERCENT } from '../domain/units'
import { ownOilShape } from '../data/own-oil-file'
import { partsOf } from '../domain/blend/giving-way'
import { isOwnId } from '../domain/blend/own-oil'
import { ownOilsOf } from '../domain/blend/own-library'
import { MOVES } from '../domain/optimise/studies/from-here'
import { keptBatch } from './batch-schema'
import { keptLedger } from './ledger-schema'
import { ownIdsIn } from './own-ids'

const limit = z.number().optional()
const limits = { min: limit, max: limit }

const oil = z.string().refine((id) => library.oils.has(id) || isOwnId(id), {
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
  z.strictObject({ nearest: z.literal('bar') }),
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
  // Of older records; the maker's bar came in its place.
  formula: z.strictObject({ name: z.string(), blend }).optional(),
  rules: rules.optional(),
  robust: z.boolean().optional(),
})

const share = z.number().min(0).max(WHOLE_PERCENT)

const bar = z.strictObject({
  parts: z
    .array(z.strictObject({ oil, percent: share, locked: z.boolean() }))
    .min(1)
    .readonly(),
  givesWay: z.union([z.strictObject({ oil }), z.literal('all')]).optional(),
  versions: z.array(z.strictObject({ number: z.number(), blend })).readonly(),
  move: z.literal(MOVES).optional(),
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
const shape = z.strictObject({
  brief,
  batch: keptBatch,
  bar: bar.optional(),
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
  ownOils: z.array(ownOilShape).readonly().optional(),
  shelfOrder: z.enum(['share', 'name', 'price']).optional(),
  pasting: z
    .strictObject({
      text: z.string(),
      mixed: z.enum(['rest', 'weights', 'percents']).optional(),
      spread: z.boolean().optional(),
      // Of older records.
      name: z.string().optional(),
      only: z.boolean().optional(),
    })
    .transform(({ name: _name, only: _only, ...pasting }) => pasting)
    .optional(),
  ledger: keptLedger.optional(),
})

/** What an older record called the formula made now is the bar in hand, kept once. */
const withBarInHand = shape.transform(({ brief: { formula, ...brief }, bar: own, ...work }) => {
  const inHand: Pick<z.output<typeof shape>, 'bar'> = own
    ? { bar: own }
    : formula
      ? { bar: { parts: partsOf(formula.blend), versions: [{ number: 1, blend: formula.blend }] } }
      : {}
  return { ...work, brief, ...inHand }
})

export type KeptWork = z.output<typeof withBarInHand>

/** Every oil that it names is in the library or described by it, soundly. */
export const keptWork = withBarInHand.superRefine((work, context) => {
  const { oils, problems } = ownOilsOf(work.ownOils ?? [], library)
  for (const { path, message } of problems) context.addIssue(`${path}: ${message}`)
  for (const id of ownIdsIn(work)) {
    if (!oils.some((oil) => oil.id === id))
      context.addIssue(`Nothing describes the oil "${id}" that is named here.`)
  }
})

/** The envelope around it; see `WorkRecord`. */
export const keptRecord = z.strictObject({
  format: z.literal('barwright-work/1'),
  id: z.string(),
  at: z.number(),
  work: keptWork,
})
