import { z } from 'zod'
import type { BatchOrder } from '../domain/batch/order/order'
import { acids, additives, liquids } from './additions-file'
import { allergenList } from './fragrance-file'
import { amount, figure } from './bounds'
import { mass } from './mass-text'
import { ownOilsShape } from './own-oil-file'
import { found } from './problems'
import { releaseShape } from './release-file'

const WATER_FORMS =
  'Give one of { "lyeConcentration": percent }, { "ratio": g water per g hydroxide } or { "percentOfOils": percent }.'
const MOULD_FORMS =
  'Give its volumeMl, boxMm, loafMm, cylinderMm, cavities or waterGrams, and only one of them.'

/** The checks of the order say more of it; what lies beyond these is no figure of a batch at all. */
const percent = figure
const perAlkali = z.strictObject({ naoh: percent.optional(), koh: percent.optional() })
const purityIs = z.union(
  [
    z.enum(['atLeast', 'exactly']),
    z.strictObject({ certificate: z.string(), within: percent.optional() }),
  ],
  {
    error: ({ input }) =>
      `${found(input)} Give "atLeast", "exactly" or { "certificate": "number on the paper", "within": points }.`,
  },
)
const shares = z.record(z.string(), percent)
const dose = { grams: mass.optional(), percentOfOils: percent.optional() }
const idOf = (facts: readonly { readonly id: string }[]) => z.enum(facts.map(({ id }) => id))

const fill = {
  fillPercent: percent.optional(),
  densityGPerMl: amount.optional(),
  count: figure.optional(),
}
const mm = amount

const mould = z.union(
  [
    z.strictObject({ volumeMl: amount, ...fill }),
    z.strictObject({ boxMm: z.strictObject({ length: mm, width: mm, height: mm }), ...fill }),
    z.strictObject({
      loafMm: z.strictObject({ length: mm, bottomWidth: mm, topWidth: mm, height: mm }),
      ...fill,
    }),
    z.strictObject({ cylinderMm: z.strictObject({ diameter: mm, length: mm }), ...fill }),
    z.strictObject({
      cavities: z.strictObject({ count: figure, volumeMl: amount }),
      ...fill,
    }),
    z.strictObject({ waterGrams: mass, ...fill }),
  ],
  { error: ({ input }) => `${found(input)} ${MOULD_FORMS}` },
)

const water = z.union(
  [
    z.strictObject({ lyeConcentration: percent }),
    z.strictObject({ ratio: figure }),
    z.strictObject({ percentOfOils: percent }),
    z.strictObject({ onlyFromLiquids: z.literal(true) }),
  ],
  { error: ({ input }) => `${found(input)} ${WATER_FORMS}` },
)

const certificate = z.strictObject({
  allergens: z
    .array(
      z.strictObject({
        allergen: idOf(allergenList.allergens),
        lowPercent: percent,
        highPercent: percent,
      }),
    )
    .optional(),
  ifraMostPercent: percent.optional(),
  ifraStatement: z.string().optional(),
  flashC: figure.optional(),
})

const lot = z.strictObject({
  saponificationValue: figure.optional(),
  tolerance: figure.optional(),
  name: z.string().optional(),
  certificate: z.string().optional(),
})

/** The file format of a batch order, version 1; shares, purities and superfat in percent. */
export const batchFile = z.strictObject({
  format: z.literal('barwright-batch/1'),
  blend: shares.describe('Share of each oil in percent of oil weight, adding to 100'),
  oilGrams: mass.optional().describe('Weight of all oils in g; or give a mould or bars'),
  mould: mould
    .optional()
    .describe(
      'Mould to fill, full where no fillPercent is given; a volumeMl takes a batter density of 1.03 g/ml, other shapes the density of the composition',
    ),
  bars: z
    .strictObject({
      count: figure,
      grams: mass,
      weight: z.enum(['wet', 'cured', 'declared']),
      trimPercent: percent.optional(),
    })
    .optional()
    .describe('Bars to make: how many, of what weight, meant wet, cured or as declared'),
  alkali: perAlkali.describe(
    'Percent of the work that each alkali does, adding to 100: by mol, or see alkaliBy',
  ),
  alkaliBy: z
    .enum(['mol', 'weight'])
    .optional()
    .describe('Whether alkali shares are of the equivalents (mol, as if left out) or of weight'),
  purity: perAlkali
    .default({})
    .describe('Percent of pure alkali in what is weighed; 100 if left out'),
  purityIs: z
    .strictObject({ naoh: purityIs.optional(), koh: purityIs.optional() })
    .optional()
    .describe(
      'How each purity is meant: atLeast (if left out; counted up to 100 % NaOH, 92 % KOH), exactly, or a certificate of the lot',
    ),
  purityUpTo: perAlkali
    .optional()
    .describe('Highest purity the bag may really have, percent; widens the span, never narrows it'),
  lyeSolution: perAlkali
    .optional()
    .describe('Alkali that comes dissolved: percent of pure hydroxide by weight; then no purity'),
  superfat: percent.describe('Lye discount in percent'),
  extraFat: z
    .strictObject({
      percent,
      of: z.enum(['equivalents', 'allFat', 'oils']),
      oils: shares,
      when: z.enum(['withOils', 'afterCook']),
    })
    .optional()
    .describe('Fat beside the blend without alkali of its own, in percent of the whole named'),
  lots: z
    .record(z.string(), lot)
    .optional()
    .describe(
      'By oil: saponification value of the lot in mg KOH/g, its tolerance (at least 0.5 %), the lot’s name and the certificate’s number',
    ),
  water: water.describe(
    'Percent hydroxide in the lye, g water per g hydroxide, percent of oils, or only from liquids',
  ),
  waterOn: z
    .enum(['weighed', 'pure'])
    .optional()
    .describe('Whether water is reckoned on hydroxide as weighed (as if left out) or as pure'),
  acids: z
    .array(
      z.strictObject({
        acid: idOf(acids),
        ...dose,
        strengthPercent: percent.optional(),
        strengthFromPercent: percent.optional(),
        certificate: z.string().optional(),
        formSure: z.boolean().optional(),
        alkali: z.enum(['add', 'leave']),
      }),
    )
    .optional()
    .describe('Acids: their hydroxide is weighed on top (add) or raises the superfat (leave)'),
  liquids: z
    .array(
      z.strictObject({
        liquid: idOf(liquids),
        grams: mass.optional(),
        replacesPercent: percent.optional(),
        waterPercent: percent.optional(),
        fatPercent: percent.optional(),
        when: z.enum(['lye', 'trace']),
      }),
    )
    .optional()
    .describe('Liquids in the place of water, in g or in percent of the water they replace'),
  additives: z
    .array(z.strictObject({ additive: idOf(additives), ...dose }))
    .optional()
    .describe('Salt, sugar, lactate, clays, colours: in g or percent of the oils'),
  fragrance: z
    .strictObject({
      ...dose,
      blend: shares,
      certificates: z.record(z.string(), certificate).optional(),
    })
    .optional()
    .describe('Fragrance in g or percent of the oils, its parts, and suppliers’ certificates'),
  process: z.enum(['cold', 'hot']).optional().describe('Cold (if left out) or hot process'),
  cook: z
    .strictObject({ extraWaterPercentOfOils: percent })
    .optional()
    .describe('Hot process: water on top that is expected to boil off, percent of the oils'),
  lye: z
    .strictObject({ startC: figure.optional(), iceGrams: mass.optional() })
    .optional()
    .describe('Temperature of the water in °C (20 if left out) and how much of it is ice'),
  cut: z
    .union([z.strictObject({ thicknessMm: mm }), z.strictObject({ barGrams: mass })], {
      error: ({ input }) => `${found(input)} Give { "thicknessMm": mm } or { "barGrams": g }.`,
    })
    .optional()
    .describe('Slices of the mould in mm, or the weight to cut bars to'),
  cure: z
    .strictObject({ days: figure.optional(), finalMoisturePercent: percent.optional() })
    .optional()
    .describe('Days of cure and water left in a dry bar (12 % if left out)'),
  scale: z
    .strictObject({
      oilStepG: mass,
      lyeStepG: mass,
      oilErrorG: mass.optional(),
      lyeErrorG: mass.optional(),
    })
    .optional()
    .describe('Smallest steps of the scales in g, and their error; exact weights if left out'),
  confirmedLean: z
    .string()
    .optional()
    .describe('Why a batch is weighed out of which more than one lot in 200 would hold free lye'),
  leanSeen: z
    .boolean()
    .optional()
    .describe('Ticked by hand: read that the leanest lots of all would leave free lye'),
  pricesPerKg: z
    .record(z.string(), figure)
    .optional()
    .describe('Money per kg by id of what is weighed: oils, naoh, koh, acids, scents'),
  papers: z
    .strictObject({
      product: z.string().optional(),
      madeOn: z.string().optional(),
      productCode: z.string().optional(),
      number: figure.optional(),
      responsiblePerson: z.string().optional(),
    })
    .optional()
    .describe(
      'What stands on sheet and label: name, day of making, batch code, who answers for it',
    ),
  actual: z
    .record(z.string(), mass)
    .optional()
    .describe('What was really weighed, by the key of its line in the plan, such as oil:olive'),
  release: releaseShape
    .optional()
    .describe('What is known of the bars after they were made: tests for free alkali'),
  ownOils: ownOilsShape,
})

/** A batch order as it stands in a file. */
export type ReadBatchFile = z.output<typeof batchFile>
export type BatchFile = z.input<typeof batchFile>

/** The order of a parsed file. */
export function orderOf({
  format: _,
  actual: _actual,
  release: _release,
  ownOils: _own,
  ...order
}: z.output<typeof batchFile>): BatchOrder {
  return order
}
