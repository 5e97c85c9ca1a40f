import { z } from 'zod'
import dutiesFile from '../../data/label-duties.json'
import type { LabelFacts } from '../domain/label/label'
import { basisSchema, sourceText } from './basis'
import { batchFacts } from './batch-facts'
import { lyeCautions } from './cautions'
import { allergenList } from './fragrance-file'

const text = z.string().min(1)

/** data/label-duties.json. */
export const dutiesSchema = z.array(
  z.strictObject({
    market: z.string().regex(/^[a-z]{2}$/u, 'A market is two small letters'),
    name: text,
    asOf: text,
    duties: z.array(text).min(1),
    basis: basisSchema,
    source: sourceText,
  }),
)

/** All that a label is made with beside its batch. */
export const labelFacts: LabelFacts = {
  batch: batchFacts,
  allergens: allergenList,
  duties: dutiesSchema.parse(dutiesFile),
  cautions: lyeCautions,
}
