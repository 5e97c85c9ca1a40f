import { z } from 'zod'
import acidsFile from '../../data/acids.json'
import additivesFile from '../../data/additives.json'
import liquidsFile from '../../data/liquids.json'
import type { AcidFact, AdditiveFact, LiquidFact } from '../domain/batch/order/facts'
import { basisSchema, idText, sourceText } from './basis'

const percent = z.number().min(0).max(100)
const text = z.string().min(1)
const fact = {
  id: idText,
  name: text,
  basis: basisSchema,
  source: sourceText,
  note: text.nullable(),
}
const inci = { inci: text, inciBasis: basisSchema }
const atoms = z.int().min(0).optional()

/** data/acids.json. */
export const acidsSchema = z.array(
  z.strictObject({
    ...fact,
    ...inci,
    formula: z.strictObject({ C: atoms, H: atoms, O: atoms, Na: atoms }),
    acidGroups: z.int().min(1),
    crystalWaters: z.int().min(0),
    strength: z.enum(['pure', 'stated']),
    usualStrengthsPercent: z.array(percent),
    usualPercentOfOils: z.strictObject({ low: percent, high: percent }),
    mostPercentOfOils: percent,
    doseBasis: basisSchema,
    leastPart: z.number().min(0.5).max(1),
    leastPartBasis: basisSchema,
    weakerForm: idText.nullable(),
    saltInci: z.strictObject({ naoh: text, koh: text }),
  }),
)

/** data/liquids.json. */
export const liquidsSchema = z.array(
  z
    .strictObject({
      ...fact,
      ...inci,
      waterPercent: percent.min(1),
      fatPercent: percent,
      fatSaponificationValue: z.number().min(0),
      heatsUp: z.boolean(),
      allergenWord: text.nullable(),
    })
    .refine(({ waterPercent, fatPercent }) => waterPercent + fatPercent <= 100, 'over 100 %')
    .refine(
      ({ fatPercent, fatSaponificationValue }) => fatPercent === 0 || fatSaponificationValue > 0,
      'fat without a saponification value',
    ),
)

/** data/additives.json. */
export const additivesSchema = z.array(
  z.strictObject({
    ...fact,
    ...inci,
    usualPercentOfOils: z.strictObject({ low: percent, high: percent }),
    waterPercent: percent,
    densityGPerMl: z.number().positive(),
    stage: z.enum(['water', 'lye', 'oils', 'trace']),
    colourant: z.boolean(),
    heatsUp: z.boolean(),
    salt: z.boolean(),
  }),
)

export const acids: readonly AcidFact[] = acidsSchema.parse(acidsFile).map(asAcid)
export const liquids: readonly LiquidFact[] = liquidsSchema.parse(liquidsFile)
export const additives: readonly AdditiveFact[] = additivesSchema.parse(additivesFile)

/** An element that is not there is left out, not undefined. */
function asAcid({ formula, ...acid }: z.output<typeof acidsSchema>[number]): AcidFact {
  const { C = 0, H = 0, O = 0, Na = 0 } = formula
  return { ...acid, formula: { C, H, O, Na } }
}
