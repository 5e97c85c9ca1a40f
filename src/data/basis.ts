import { z } from 'zod'
import type { Basis } from '../domain/chemistry/fatty-acid'

/** How sure a figure is. */
export const basisSchema = z.enum([
  'published',
  'derived',
  'common practice',
  'memory',
  'assumption',
]) satisfies z.ZodType<Basis>

/** Where a figure comes from, in words. */
export const sourceText = z.string().min(1)

/** Small letters, figures and hyphens. */
export const idText = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'small letters, figures and hyphens')
