import { z } from 'zod'
import namesFile from '../../data/oil-names.json'
import { basisSchema, idText } from './basis'

const names = z.array(z.string().min(1)).min(1)

/** data/oil-names.json. */
export const oilNamesSchema = z.strictObject({
  basis: basisSchema,
  names: z.record(idText, z.strictObject({ de: names, fr: names, es: names, it: names })),
  /** Names that several oils have, which are asked about. */
  shared: z.array(z.strictObject({ name: z.string().min(1), oils: z.array(idText).min(2) })),
})

/** What oils are called in other languages, and names that several of them have. */
export type OtherNames = z.infer<typeof oilNamesSchema>

export const otherNames: OtherNames = oilNamesSchema.parse(namesFile)
