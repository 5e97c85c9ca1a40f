import { oilOf } from '../blend/library'
import { GRAMS_PER_KG, fractionFromPercent } from '../units'
import { MOLAR_MASS_KOH } from '../chemistry/atoms'
import { saponificationOf } from './lots'
import type { ReadyPlan } from './plan'
import { endsOf, errorsOf, EXACT, type Reckoning, superfatAt, superfatSpan } from './reach'
import { roundedUp } from './rounding'

/** What to put in to mend a batch. */
export type Fix =
  /** What was weighed short or forgotten. */
  | { readonly kind: 'putIn'; readonly key: string; readonly name: string; readonly grams: number }
  /** More of an oil, where there is more lye than the fat can use safely. */
  | {
      readonly kind: 'addOil'
      readonly oil: string
      readonly name: string
      readonly grams: number
      /** Superfat with it, typical and of the leanest lots, percent. */
      readonly superfatPercent: number
      readonly leanestPercent: number
    }

/** Step an addition is offered in where no scale is stated, g. */
const OFFER_STEP_G = 1

/**
 * How much of each of the blend's oils would mend a batch with too much lye, the blend's largest oil first.
 * Two needs, and the larger counts: that typical lots come to the superfat asked, T + ΔT = bound/(1 − s),
 * and that the leanest lots use up all lye, T_low + ΔT_low = bound_max; grams = ΔT × 56105 / SV of that end.
 */
export function oilFixes(plan: ReadyPlan, reckoning: Reckoning): Fix[] {
  const needs = needsOf(plan, reckoning)
  if (needs.typicalMol <= 0 && needs.leanMol <= 0) return []
  return Object.entries(plan.oilGrams)
    .sort(([, a], [, b]) => b - a)
    .map(([oil]) => oilFix(oil, needs, reckoning))
}

/** Fat that is missing, mol. */
function needsOf(plan: ReadyPlan, reckoning: Reckoning) {
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
  const value = saponificationOf(oil, library, order.lots)
  const gramsFor = (mol: number, saponification: number) =>
    (Math.max(0, mol) * MOLAR_MASS_KOH * GRAMS_PER_KG) / saponification
  const exact = Math.max(gramsFor(typicalMol, value.typical), gramsFor(leanMol, value.low))
  const step = order.scale?.oilStepG ?? OFFER_STEP_G
  const grams = roundedUp(exact, step)
  const oilGrams = { ...weights.oilGrams, [oil]: (weights.oilGrams[oil] ?? 0) + grams }
  const mended = { ...reckoning, weights: { ...weights, oilGrams } }
  return {
    kind: 'addOil',
    oil,
    name: oilOf(library, oil).name,
    grams,
    superfatPercent: superfatAt(mended, 'typical'),
    leanestPercent: superfatSpan(mended, errorsOf(order)).min,
  }
}
