import { z } from 'zod'
import { batchFile } from './batch-file'
import { briefFile } from './brief-file'

/** The JSON Schemas (draft 2020-12) of the files that the command line reads, by command. */
export const jsonSchemas = {
  solve: () => z.toJSONSchema(briefFile, { io: 'input' }),
  batch: () => z.toJSONSchema(batchFile, { io: 'input' }),
} as const
