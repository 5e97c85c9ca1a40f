import { z } from 'zod'
import { USUAL_PURITY_PERCENT } from '../domain/batch/order/purity'
import { releaseShape } from '../data/release-file'

const number = z.number()
const some = number.optional()
const word = z.string().optional()
const perAlkali = z.strictObject({ naoh: some, koh: some })
const byName = z.record(z.string(), number)
const amount = { grams: some, percentOfOils: some }
const alkali = z.enum(['naoh', 'koh'])

const fill = { fillPercent: some, densityGPerMl: some, count: some }
const mould = z.union([
  z.strictObject({ volumeMl: number, ...fill }),
  z.strictObject({
    boxMm: z.strictObject({ length: number, width: number, height: number }),
    ...fill,
  }),
  z.strictObject({
    loafMm: z.strictObject({
      length: number,
      bottomWidth: number,
      topWidth: number,
      height: number,
    }),
    ...fill,
  }),
  z.strictObject({ cylinderMm: z.strictObject({ diameter: number, length: number }), ...fill }),
  z.strictObject({ cavities: z.strictObject({ count: number, volumeMl: number }), ...fill }),
  z.strictObject({ waterGrams: number, ...fill }),
])

const size = {
  mould: mould.optional(),
  bars: z
    .strictObject({
      count: number,
      grams: number,
      weight: z.enum(['wet', 'cured', 'declared']),
      trimPercent: some,
    })
    .optional(),
  cut: z
    .union([z.strictObject({ thicknessMm: number }), z.strictObject({ barGrams: number })])
    .optional(),
  scale: z.strictObject({
    oilStepG: number,
    lyeStepG: number,
    oilErrorG: some,
    lyeErrorG: some,
  }),
}

const purityIs = z.union([
  z.enum(['atLeast', 'exactly']),
  z.strictObject({ certificate: z.string(), within: some }),
])

const lye = {
  alkali,
  purity: z.strictObject({ naoh: number, koh: number }),
  purityIs: z.strictObject({ naoh: purityIs.optional(), koh: purityIs.optional() }).optional(),
  secondAlkali: z.strictObject({ percent: number, by: z.enum(['mol', 'weight']) }).optional(),
  purityUpTo: perAlkali.optional(),
  lyeSolution: perAlkali.optional(),
  superfatPercent: number,
  extraFat: z
    .strictObject({
      percent: number,
      of: z.enum(['equivalents', 'allFat', 'oils']),
      oils: byName,
      when: z.enum(['withOils', 'afterCook']),
    })
    .optional(),
  lots: z
    .record(
      z.string(),
      z.strictObject({ saponificationValue: some, tolerance: some, name: word, certificate: word }),
    )
    .optional(),
  confirmedLean: word,
  confirmedLeanAt: some,
  leanSeen: z.boolean().optional(),
  leanSeenAt: some,
}

const water = {
  water: z.union([
    z.strictObject({ lyeConcentration: number }),
    z.strictObject({ ratio: number }),
    z.strictObject({ percentOfOils: number }),
    z.strictObject({ onlyFromLiquids: z.literal(true) }),
  ]),
  waterTyped: z.boolean().optional(),
  waterOn: z.enum(['weighed', 'pure']).optional(),
  liquids: z
    .array(
      z.strictObject({
        liquid: z.string(),
        grams: some,
        replacesPercent: some,
        waterPercent: some,
        fatPercent: some,
        when: z.enum(['lye', 'trace']),
      }),
    )
    .readonly()
    .optional(),
  lye: z.strictObject({ startC: some, iceGrams: some }).optional(),
}

const additions = {
  acids: z
    .array(
      z.strictObject({
        acid: z.string(),
        ...amount,
        strengthPercent: some,
        strengthFromPercent: some,
        certificate: word,
        formSure: z.boolean().optional(),
        alkali: z.enum(['add', 'leave']),
      }),
    )
    .readonly()
    .optional(),
  additives: z
    .array(z.strictObject({ additive: z.string(), ...amount }))
    .readonly()
    .optional(),
  fragrance: z
    .strictObject({
      ...amount,
      blend: byName,
      certificates: z
        .record(
          z.string(),
          z.strictObject({
            allergens: z
              .array(
                z.strictObject({
                  allergen: z.string(),
                  lowPercent: number,
                  highPercent: number,
                }),
              )
              .readonly()
              .optional(),
            ifraMostPercent: some,
            ifraStatement: word,
            flashC: some,
          }),
        )
        .optional(),
    })
    .optional(),
}

const papers = {
  papers: z
    .strictObject({
      product: word,
      madeOn: word,
      productCode: word,
      number: some,
      responsiblePerson: word,
    })
    .optional(),
  pricesPerKg: byName.optional(),
  unit: z.enum(['g', 'kg', 'oz', 'lb']).optional(),
  paper: z.enum(['A4', 'Letter']).optional(),
}

const run = z.strictObject({
  ticks: byName,
  actual: byName,
  cautionRead: z.boolean(),
  left: byName.optional(),
  part: z.strictObject({ usedG: number, ofG: number, waterG: number }).optional(),
  tares: z.strictObject({ pot: number, jug: number }).partial().optional(),
  cook: z.strictObject({ startedAt: number, stirredAt: z.array(number).readonly() }).optional(),
  temperatures: z
    .array(z.strictObject({ step: z.string(), at: number, tempC: number }))
    .readonly()
    .optional(),
  pot: z.strictObject({ readsG: number, putBackG: some }).optional(),
})

const kept = z.strictObject({
  oilGrams: number,
  ...lye,
  ...water,
  ...additions,
  ...size,
  ...papers,
  process: z.enum(['cold', 'hot']).optional(),
  cook: z.strictObject({ extraWaterPercentOfOils: number }).optional(),
  cure: z.strictObject({ days: some, finalMoisturePercent: some }).optional(),
  lyeStepChosen: z.boolean().optional(),
  run: run.optional(),
  release: releaseShape.optional(),
})

/**
 * Records from before each alkali had a purity of its own held one for the first and one for the second.
 */
function withOwnPurities(record: unknown): unknown {
  if (typeof record !== 'object' || record === null || !('purityPercent' in record)) return record
  const { purityPercent, secondAlkali, ...rest } = record as Record<string, unknown>
  const first = rest['alkali'] === 'koh' ? 'koh' : 'naoh'
  const second = first === 'naoh' ? 'koh' : 'naoh'
  const { purityPercent: other, ...share } = { ...(secondAlkali as Record<string, unknown>) }
  return {
    ...rest,
    purity: {
      ...USUAL_PURITY_PERCENT,
      [first]: purityPercent,
      ...(other !== undefined && { [second]: other }),
    },
    ...(secondAlkali !== undefined && { secondAlkali: share }),
  }
}

/**
 * The batch as it is kept between visits. All but what a plain batch has may be left out, so that records
 * from before there was anything else still read. What names an acid or a scent that the library no longer
 * holds is kept as it is: the page says so where it stands.
 */
export const keptBatch = z.preprocess(withOwnPurities, kept)
