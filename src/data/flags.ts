import { z } from 'zod'
import file from '../../data/flags.json'
import type { FlagRules } from '../domain/blend/flags'
import { library } from './library'

const text = z.string().min(1)
const basis = z.enum(['published', 'derived', 'common practice', 'memory', 'assumption'])
const oil = z.string().refine((id) => library.oils.has(id), 'No oil of the library has this id')
const measure = z
  .string()
  .refine((id) => library.measures.some((one) => one.id === id), 'No measure has this id')
const tag = z
  .string()
  .refine(
    (id) => [...library.oils.values()].some(({ tags }) => tags.includes(id)),
    'No oil of the library carries this tag',
  )

/** data/flags.json. */
export const flagsSchema = z.strictObject({
  trust: z.array(
    z.strictObject({
      id: text,
      oils: z.array(oil).min(1).nullable(),
      mostPercent: z.number().positive().max(100),
      reason: text,
      basis,
    }),
  ),
  keeping: z.strictObject({ measure, least: z.number(), reason: text, basis }),
  allergens: z.array(z.strictObject({ tag, word: text })),
  allergenReason: text,
}) satisfies z.ZodType<FlagRules>

/** What the page puts a flag on. */
export const flagRules: FlagRules = flagsSchema.parse(file)
