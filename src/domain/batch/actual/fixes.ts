import { oilOf } from '../../blend/library'
import { GRAMS_PER_KG, fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { MOLAR_MASS_KOH } from '../../chemistry/atoms'
import { bindsOf } from '../weigh/lots'
import type { ReadyPlan } from '../result/plan'
import { endsOf, errorsOf, EXACT } from '../superfat/reach'
import { type Superfats, superfatsOf } from '../superfat/superfats'
import type { Reckoning } from '../weigh/reckoning'
import { roundedUp } from '../weigh/rounding'

/** What to put in to mend a batch. */
export type Fix =
  /** Fat that was weighed short or forgotten. */
  | { readonly kind: 'putIn'; readonly key: string; readonly name: string; readonly grams: number }
  /**
   * Acid that was weighed short or forgotten, where more oil can't be had: never dry into caustic batter,
   * but dissolved in so much cold water, by spoonfuls, off the heat.
   */
  | {
      readonly kind: 'dissolveAcid'
      readonly key: string
      readonly name: string
      readonly grams: number
      /** Cold water to dissolve it in; 0 where it comes as a solution. g. */
      readonly waterG: number
    }
  /** More of an oil, where there is more lye than the fat can use safely, and what it comes to with it. */
  | ({
      readonly kind: 'addOil'
      readonly oil: string
      readonly name: string
      readonly grams: number
    } & Superfats)

/** Step an addition is offered in where no scale is stated, g. */
const OFFER_STEP_G = 1

/**
 * How much of each of the blend's oils would mend a batch with too much lye, the blend's largest oil first.
 * Two needs, and the larger counts: that typical lots come to the superfat asked, T + ΔT = bound/(1 − s),
 * and that the leanest lots use up all lye, T_low + ΔT_low = bound_max; grams = ΔT × 56105 / SV of that end.
 * What is added stands on the scale once more, so it counts one error of the scale short at the lean end.
 */
export function oilFixes(plan: ReadyPlan, reckoning: Reckoning): Fix[] {
  const needs = needsOf(plan, reckoning)
  if (needs.typicalMol <= 0 && needs.leanMol <= 0) return []
  const { library, order } = reckoning
  return Object.entries(plan.oilGrams)
    .filter(([oil]) => bindsOf(oil, library, order).low > 0)
    .sort(([, a], [, b]) => b - a)
    .map(([oil]) => oilFix(oil, needs, reckoning))
}

/** Fat that is missing for the superfat asked, and for the leanest lots to use up all lye; mol. */
export function needsOf(plan: ReadyPlan, reckoning: Reckoning) {
  const typical = endsOf(reckoning, 'typical', EXACT, 'all')
  const lean = endsOf(reckoning, 'low', errorsOf(reckoning.order), 'all')
  const asked = fractionFromPercent(plan.superfat.askedPercent)
  const leanMol = lean.alkaliMol - lean.acidMol - lean.fatMol
  return {
    typicalMol: (typical.alkaliMol - typical.acidMol) / (1 - asked) - typical.fatMol,
    leanMol: plan.order.confirmedLean === undefined ? leanMol : 0,
  }
}

function oilFix(
  oil: string,
  { typicalMol, leanMol }: { typicalMol: number; leanMol: number },
  reckoning: Reckoning,
): Fix {
  const { order, weights, library } = reckoning
  const value = bindsOf(oil, library, order)
  const gramsFor = (mol: number, saponification: number) =>
    (Math.max(0, mol) * MOLAR_MASS_KOH * GRAMS_PER_KG) / saponification
  const errors = errorsOf(order)
  const forLean = leanMol > 0 ? gramsFor(leanMol, value.low) + errors.oilG : 0
  const exact = Math.max(gramsFor(typicalMol, value.typical), forLean)
  const step = order.scale?.oilStepG ?? OFFER_STEP_G
  const grams = roundedUp(exact, step)
  const oilGrams = { ...weights.oilGrams, [oil]: (weights.oilGrams[oil] ?? 0) + grams }
  const mended = { ...reckoning, weights: { ...weights, oilGrams } }
  const weighedShort = withOil(mended, oil, -errors.oilG)
  return {
    kind: 'addOil',
    oil,
    name: oilOf(library, oil).name,
    grams,
    ...superfatsOf(mended, weighedShort),
  }
}

function withOil(reckoning: Reckoning, oil: string, moreG: number): Reckoning {
  const { weights } = reckoning
  const oilGrams = { ...weights.oilGrams, [oil]: (weights.oilGrams[oil] ?? 0) + moreG }
  return { ...reckoning, weights: { ...weights, oilGrams } }
}

/** Cold water that an acid is dissolved in, g for each g of dry acid: common practice, so that it is thin. */
const WATER_TO_ACID = 5

/** Acid that is short, as it may still go in where oil can't: dissolved. */
export function dissolvedAcid(
  plan: ReadyPlan,
  line: { readonly key: string; readonly name: string },
  grams: number,
): Extract<Fix, { kind: 'dissolveAcid' }> {
  const strength = plan.order.acids?.[Number(line.key.split(':')[1])]?.strengthPercent
  const dry = strength === undefined || strength === WHOLE_PERCENT
  const waterG = dry
    ? roundedUp(grams * WATER_TO_ACID, plan.order.scale?.oilStepG ?? OFFER_STEP_G)
    : 0
  return { kind: 'dissolveAcid', key: line.key, name: line.name, grams, waterG }
}
