import { z } from 'zod'
import type { ReleaseRecord } from '../domain/batch/release/alkali-test'
import { figure } from './bounds'
import { found } from './problems'

const TEST_FORMS =
  'Give "titration", or "phenolphthalein" in warm neutral alcohol. A pH strip or a taste can’t show that no lye is left and releases nothing.'

const everyTest = {
  on: z.string().describe('Day of the test, YYYY-MM-DD'),
  who: z.string().describe('Who made it'),
  bar: z.string().describe('Which bar was tested'),
  batch: z
    .string()
    .optional()
    .describe('The batch it was made on, as release.pin of the command batch; without it, void'),
}

const test = z.discriminatedUnion(
  'way',
  [
    z.strictObject({
      way: z.literal('titration'),
      ...everyTest,
      acidMl: figure.describe('Acid used for the soap, ml'),
      blankMl: figure.optional().describe('Acid used for the alcohol alone, ml'),
      normality: figure.describe('Acid, mol per litre'),
      sampleG: figure.describe('Soap weighed in, g'),
      as: z.enum(['naoh', 'koh']).optional().describe('Hydroxide of the result; naoh if left out'),
    }),
    z.strictObject({
      way: z.literal('phenolphthalein'),
      ...everyTest,
      colour: z
        .enum(['colourless', 'pink'])
        .describe('Of the soap dissolved in warm neutral alcohol'),
    }),
  ],
  {
    error: ({ code, input }) =>
      code === 'invalid_union' ? `${found(wayOf(input))} ${TEST_FORMS}` : undefined,
  },
)

/** What is known of a batch after it was made, as it stands in a file. */
export const releaseShape = z.strictObject({
  tests: z.array(test).readonly().describe('Tests of bars for free alkali; the worst counts'),
}) satisfies z.ZodType<ReleaseRecord>

function wayOf(test: unknown): unknown {
  return typeof test === 'object' && test !== null && 'way' in test ? test.way : undefined
}
