import { z } from 'zod'
import file from '../../data/lye-solution.json'
import type { AlkaliKind } from '../domain/chemistry/alkali'
import type { LyeTable } from '../domain/chemistry/lye-solution'
import { basisSchema, sourceText } from './basis'

const sourced = { basis: basisSchema, source: sourceText }
const atStrength = z.strictObject({
  percent: z.number().min(0).max(100),
  value: z.number().positive(),
  ...sourced,
})

/** Rows from weak to strong, as interpolation wants them. */
const rising = z
  .array(atStrength)
  .min(2)
  .refine(
    (rows) => rows.every(({ percent }, i) => i === 0 || percent > (rows[i - 1]?.percent ?? 100)),
    'Rows must rise in strength',
  )

const table = z.strictObject({
  heatOfSolution: z
    .array(
      z.strictObject({
        waterPerAlkaliMol: z.number().positive().nullable(),
        kjPerMol: z.number().positive(),
        ...sourced,
      }),
    )
    .min(2),
  heatCapacityJPerGK: rising,
  densityGPerMl: z.array(z.strictObject({ tempC: z.number(), points: rising })).min(1),
  boilingC: rising,
  boundWater: z
    .strictObject({
      kjPerMol: z.number().positive(),
      mostPurePercent: z.number().min(50).max(100),
      usualMostPercent: z.number().min(50).max(100),
      ...sourced,
    })
    .nullable(),
  iceColdHolds: z.strictObject({ percent: z.number().positive().max(60), ...sourced }),
  peakUncertaintyK: z.number().positive(),
}) satisfies z.ZodType<LyeTable>

/** data/lye-solution.json. */
export const lyeSolutionSchema = z.strictObject({ naoh: table, koh: table })

/** Heat, density and boiling of hydroxide in water. */
export const lyeTables: Readonly<Record<AlkaliKind, LyeTable>> = lyeSolutionSchema.parse(file)
