import { z } from 'zod'
import file from '../../data/free-alkali.json'
import type { AlkaliLimits } from '../domain/batch/release/alkali-test'
import { basisSchema, sourceText } from './basis'

const above0 = z.number().positive()
const figure = z.strictObject({
  value: above0,
  basis: basisSchema,
  source: sourceText.optional(),
})

/** data/free-alkali.json. */
export const freeAlkaliFile = z.strictObject({
  mostPercent: figure,
  seePercent: figure,
  readingMl: figure,
  buretteMl: figure,
  normality: z.strictObject({
    least: above0,
    most: above0,
    weakUnder: above0,
    basis: basisSchema,
  }),
  mostSampleG: figure,
  restsOn: z.string().min(1),
})

/** What tests for free alkali are judged by. */
export const alkaliLimits: AlkaliLimits = limitsOf(freeAlkaliFile.parse(file))

function limitsOf({
  mostPercent,
  seePercent,
  readingMl,
  buretteMl,
  normality,
  mostSampleG,
  restsOn,
}: z.output<typeof freeAlkaliFile>): AlkaliLimits {
  const { least, most, weakUnder } = normality
  return {
    mostPercent: mostPercent.value,
    seePercent: seePercent.value,
    readingMl: readingMl.value,
    buretteMl: buretteMl.value,
    normality: { least, most, weakUnder },
    mostSampleG: mostSampleG.value,
    restsOn,
  }
}
