import { z } from 'zod'
import allergensFile from '../../data/allergens.json'
import scentsFile from '../../data/essential-oils.json'
import type { ScentFact } from '../domain/batch/order/facts'
import type { AllergenList } from '../domain/label/allergen-list'
import { basisSchema, idText, sourceText } from './basis'

const percent = z.number().min(0).max(100)
const text = z.string().min(1)
const cas = z.string().regex(/^\d{2,7}-\d{2}-\d$/, 'A CAS number reads like 78-70-6')
const range = z
  .strictObject({ low: z.number().min(0), high: z.number() })
  .refine(({ low, high }) => low <= high, 'the low end is above the high one')
const formula = z.strictObject({ C: z.int(), H: z.int(), O: z.int() })

/** data/allergens.json. */
export const allergensSchema = z.strictObject({
  asOf: text,
  basis: basisSchema,
  source: sourceText,
  rinseOffLimitPercent: percent,
  banned: z.array(z.strictObject({ name: text, cas })),
  allergens: z.array(
    z.strictObject({
      id: idText,
      name: text,
      annexEntry: z.int().positive(),
      cas: z.array(cas).min(1),
      listed: z.enum(['older', '2023']),
      alkali: z
        .strictObject({
          formula,
          molesPerMol: z.int().positive(),
          forms: z.strictObject({ allergen: idText, formula }).nullable(),
        })
        .nullable(),
      mostPercentInProduct: percent.nullable(),
      note: text.nullable(),
    }),
  ),
})

/** The fragrance allergens that a label must name. */
export const allergenList: AllergenList = allergensSchema.parse(allergensFile)

const known = new Set(allergenList.allergens.map(({ id }) => id))
const allergenId = idText.refine((id) => known.has(id), 'No allergen has this id')

/** data/essential-oils.json. */
export const scentsSchema = z.array(
  z.strictObject({
    id: idText,
    name: text,
    standard: text,
    inci: text,
    inciBasis: basisSchema,
    listedAs: allergenId.nullable(),
    flashC: range.nullable(),
    flashBasis: basisSchema,
    usualPercentOfOils: range,
    constituents: z.array(
      z
        .strictObject({ allergen: allergenId, lowPercent: percent, highPercent: percent })
        .refine(({ lowPercent, highPercent }) => lowPercent <= highPercent, 'low above high'),
    ),
    basis: basisSchema,
    source: sourceText,
    note: text.nullable(),
  }),
)

export const scents: readonly ScentFact[] = scentsSchema.parse(scentsFile)
