import { z } from 'zod'

/** The JSON Schema (draft 2020-12) of what may stand in a file of that shape. */
export function fileSchema(shape: z.ZodType): unknown {
  return z.toJSONSchema(shape, { io: 'input' })
}
