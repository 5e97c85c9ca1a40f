import { z } from 'zod'
import { batchFile } from './batch-file'
import { briefFile } from './brief-file'
import { sweepLine } from './sweep-file'

/** The JSON Schemas (draft 2020-12) of the files that the command line reads. */
export const jsonSchemas = {
  brief: () => z.toJSONSchema(briefFile, { io: 'input' }),
  batch: () => z.toJSONSchema(batchFile, { io: 'input' }),
  sweepLine: () => z.toJSONSchema(sweepLine, { io: 'input' }),
} as const
