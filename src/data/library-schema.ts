import { z } from 'zod'
import { COST, type AcidMeasure, type CostMeasure } from '../domain/blend/measure'
import type { Oil, SourcedRange } from '../domain/blend/oil'
import type { Basis, FattyAcid } from '../domain/chemistry/fatty-acid'
import { WHOLE_PERCENT } from '../domain/units'
import { libraryFindings } from './library-checks'

/** Longest short name that a strip segment and a table column hold, in letters. */
const SHORT_NAME_LETTERS = 16

/** How far a typical profile or a blend may miss 100 and still count as whole, in percent. */
const SUM_TOLERANCE = { profile: 1, blend: 1e-9 }

const text = z.string().min(1)
const id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'An id is small letters, figures and hyphens')
const count = z.int().min(0)
const amount = z.number().min(0)
const rises = ({ low, typical, high }: { low: number; typical: number; high: number }) =>
  low <= typical && typical <= high

const basisSchema = z.enum([
  'published',
  'derived',
  'common practice',
  'memory',
  'assumption',
]) satisfies z.ZodType<Basis>

/** data/sources.json: where figures come from and whether they were read there or recalled. */
export const sourceSchema = z.strictObject({
  id,
  citation: text,
  taken: text,
  basis: basisSchema,
  /** The standard's own text was read, not a restatement. */
  standardItself: z.literal(true).optional(),
})

/** data/fatty-acids.json. */
export const fattyAcidSchema = z.strictObject({
  id,
  name: text,
  shorthand: text,
  carbons: z.int().min(2),
  doubleBonds: count,
  hydroxyls: count,
  epoxides: count,
  rings: count.optional(),
  meltingPointC: z.number().nullable(),
  bisAllylic: count,
  molarMassGPerMol: z.number().positive(),
  massBasis: basisSchema,
  massSource: id,
  meltingBasis: basisSchema,
  meltingSource: id,
}) satisfies z.ZodType<FattyAcid>

const limitsSource = { basis: basisSchema, source: id }
const typicalSource = { typicalBasis: basisSchema, typicalSource: id }

const rangeSchema = z
  .strictObject({ low: amount, typical: amount, high: amount, ...limitsSource, ...typicalSource })
  .refine(rises, {
    error: ({ input }) =>
      `${JSON.stringify(input)} does not rise: put low, typical and high in order`,
  }) satisfies z.ZodType<SourcedRange>

const fraction = z.number().min(0).max(1)
const partSchema = z
  .strictObject({ low: fraction, typical: fraction, high: fraction })
  .refine(rises, { error: 'The reacting part does not rise: put low, typical and high in order' })

/** A saponification value, with a printed low end that was widened and a measured spread where there is one. */
const saponificationSchema = z
  .strictObject({
    low: amount,
    typical: amount,
    high: amount,
    printedLow: amount.optional(),
    spread: z
      .strictObject({ sd: z.number().positive(), lots: z.int().min(2), source: id })
      .optional(),
    ...limitsSource,
    ...typicalSource,
  })
  .refine(rises, {
    error: 'The saponification value does not rise: put low, typical and high in order',
  })
  .refine(({ low, printedLow }) => printedLow === undefined || low < printedLow, {
    error: 'A printed low end stands only beside a lower one',
  })

const profileSchema = z.record(id, rangeSchema).refine(
  (acids) => {
    const sum = Object.values(acids).reduce((total, { typical }) => total + typical, 0)
    return Math.abs(sum - WHOLE_PERCENT) <= SUM_TOLERANCE.profile
  },
  { error: 'Typical shares must add up to 100 within 1: correct the shares' },
)

/** One entry of data/oils.json. */
export const oilSchema = z.strictObject({
  id,
  name: text,
  shortName: text.max(SHORT_NAME_LETTERS),
  code: z.string().regex(/^[A-Za-z]{3,4}$/, 'A code is three or four letters'),
  kind: z.enum(['triglyceride', 'wax-ester', 'free-acid']),
  family: z.enum(['lauric', 'hard', 'oleic', 'polyunsaturated', 'ricinoleic']),
  colour: z.string().regex(/^#[0-9A-F]{6}$/, 'A colour is # and six capital hex digits'),
  tags: z.array(id).min(1),
  synonyms: z.array(text),
  inci: z.strictObject({
    oil: text.nullable(),
    sodiumSoap: text.nullable(),
    potassiumSoap: text.nullable(),
    ...limitsSource,
  }),
  acids: profileSchema,
  saponificationValue: saponificationSchema,
  reacts: z.strictObject({ cold: partSchema, hot: partSchema, ...limitsSource }).optional(),
  waxRest: z
    .strictObject({ gPerMolOfAcid: z.number().positive(), doubleBonds: amount, ...limitsSource })
    .optional(),
  iodineValue: rangeSchema,
  unsaponifiableGPerKg: z
    .strictObject({ typical: amount, high: amount, ...limitsSource, ...typicalSource })
    .refine(({ typical, high }) => typical <= high, {
      error: 'Typical unsaponifiables lie above the limit: correct one of them',
    }),
  densityGPerMl: z.number().positive().nullable(),
  meltingC: z.number().nullable(),
  physicalBasis: basisSchema,
  cas: z
    .string()
    .regex(/^\d{2,7}-\d{2}-\d$/, 'A CAS number reads like 8001-31-8')
    .nullable(),
  note: text.nullable(),
}) satisfies z.ZodType<Oil>

const measureBase = { name: text, meaning: text, tie: z.number().positive(), shown: z.boolean() }
const limits = z.array(text).min(1)

const acidMeasureSchema = z.strictObject({
  id: id.refine((value) => value !== COST, 'Cost is made of prices, not of fatty acids'),
  ...measureBase,
  better: z.enum(['more', 'less']),
  unit: z.literal('points'),
  offset: z.number(),
  weights: z.record(
    id,
    z.strictObject({ weight: z.number().min(-1).max(1), basis: basisSchema, source: text }),
  ),
  unsaponifiable: z
    .strictObject({ pointsPerGPer100G: amount, cap: amount, basis: basisSchema, source: text })
    .nullable(),
  limits,
}) satisfies z.ZodType<AcidMeasure>

const costMeasureSchema = z.strictObject({
  id: z.literal(COST),
  ...measureBase,
  better: z.literal('less'),
  unit: z.literal('money per kg'),
  limits,
}) satisfies z.ZodType<CostMeasure>

/** One entry of data/measures.json. */
export const measureSchema = z.discriminatedUnion('unit', [acidMeasureSchema, costMeasureSchema])

/** One entry of data/reference-bars.json; blend is percent of oil weight by oil id. */
export const referenceBarSchema = z.strictObject({
  id,
  letter: z.string().regex(/^[A-Z]$/, 'A letter is one capital'),
  name: text,
  blend: z
    .record(id, z.number().positive())
    .refine(
      (blend) =>
        Math.abs(Object.values(blend).reduce((sum, share) => sum + share, 0) - WHOLE_PERCENT) <=
        SUM_TOLERANCE.blend,
      { error: 'Shares must add up to 100 percent: correct the blend' },
    ),
  why: text,
  ...limitsSource,
})

/** All data files together: each entry by itself, then what one file says of another. */
export const librarySchema = z
  .strictObject({
    sources: z.array(sourceSchema),
    acids: z.array(fattyAcidSchema),
    oils: z.array(oilSchema),
    measures: z.array(measureSchema),
    referenceBars: z.array(referenceBarSchema),
  })
  .check(({ value, issues }) => {
    for (const message of libraryFindings(value)) {
      issues.push({ code: 'custom', message, input: value })
    }
  })

export type Source = z.infer<typeof sourceSchema>
export type ReferenceBar = z.infer<typeof referenceBarSchema>
export type LibraryFiles = z.infer<typeof librarySchema>
