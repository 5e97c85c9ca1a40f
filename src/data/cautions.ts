import { z } from 'zod'
import file from '../../data/lye-cautions.json'

const cautionsFile = z.strictObject({
  basis: z.literal('common practice'),
  note: z.string(),
  cautions: z.array(z.string().min(1)).min(1),
})

/** What to know before handling lye; stands wherever lye figures stand. */
export const lyeCautions: readonly string[] = cautionsFile.parse(file).cautions
