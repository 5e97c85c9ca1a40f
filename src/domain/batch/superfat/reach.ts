import { ALKALI_MOLAR_MASS, alkaliEquivalents } from '../../chemistry/alkali'
import { superfatFraction } from '../../chemistry/superfat'
import type { Interval } from '../../interval'
import { percentFromFraction } from '../../units'
import { weakestPart, weighedAcids } from '../weigh/acid-weights'
import { weighedAlkalis } from '../weigh/alkali-weights'
import { type BatchFacts, factOf } from '../order/facts'
import { bindsOf, type RangeEnd } from '../weigh/lots'
import { alkalisOf, type BatchOrder } from '../order/order'
import { contentOf, contentUpTo } from '../order/purity'
import type { Reckoning } from '../weigh/reckoning'
import { liquidFatG } from '../weigh/water-weights'
import type { Grams, Weights } from '../weigh/weights'

/** What a span takes in beside the lots of the oils. */
export interface Errors {
  /** How far each weighing may be off, g either way. */
  readonly oilG: number
  readonly lyeG: number
  /** Whether purity may be as high, and acid as weak, as the order says they may be. */
  readonly contents: boolean
}

/** The lots alone. */
export const EXACT: Errors = { oilG: 0, lyeG: 0, contents: false }

/** Which fat counts: all there is, or what is in the pot while it cooks. */
export type WhichFat = 'all' | 'inCook'

/** The errors of an order's scales, one step a weighing where none is stated, and of its contents. */
export function errorsOf({ scale }: BatchOrder): Errors {
  if (!scale) return { oilG: 0, lyeG: 0, contents: true }
  return {
    oilG: scale.oilErrorG ?? scale.oilStepG,
    lyeG: scale.lyeErrorG ?? scale.lyeStepG,
    contents: true,
  }
}

/**
 * The span of the superfat: leanest where every oil's lot stands at its low saponification value and
 * was weighed short, the hydroxide is as pure as it may be and was weighed over, and acids are weak
 * and short; richest the other way. 1 − (alkali − acids) / T at both ends, percent.
 */
export function superfatSpan(
  reckoning: Reckoning,
  errors: Errors,
  which: WhichFat = 'all',
): Interval {
  return {
    min: superfatAt(reckoning, 'low', errors, which),
    max: superfatAt(reckoning, 'high', errors, which),
  }
}

/** The superfat at one end, or at typical values as weighed, percent. */
export function superfatAt(
  reckoning: Reckoning,
  end: RangeEnd,
  errors: Errors = EXACT,
  which: WhichFat = 'all',
): number {
  const ends = endsOf(reckoning, end, errors, which)
  return percentFromFraction(superfatFraction(ends.alkaliMol, ends.acidMol, ends.fatMol))
}

/** Fat, alkali and acids at one end, mol. */
export function endsOf(reckoning: Reckoning, end: RangeEnd, errors: Errors, which: WhichFat) {
  return {
    fatMol: fatMol(reckoning, end, errors, which),
    alkaliMol: alkaliMol(reckoning, end, errors),
    acidMol: acidMol(reckoning, end, errors),
  }
}

function fatMol(
  { order, weights, library, facts }: Reckoning,
  end: RangeEnd,
  errors: Errors,
  which: WhichFat,
) {
  const of = (grams: Grams) =>
    Object.entries(grams).reduce((mol, [oil, g]) => {
      const value = bindsOf(oil, library, order)[end]
      return mol + alkaliEquivalents(shifted(g, end, errors.oilG), value)
    }, 0)
  const late = which === 'inCook' && order.extraFat?.when === 'afterCook'
  const extra = late ? 0 : of(weights.extraFatGrams)
  return of(weights.oilGrams) + extra + liquidFatMol(order, weights, facts, end)
}

/** The fat of milk and the like is not counted on at the lean end: its content varies too much. */
function liquidFatMol(order: BatchOrder, weights: Weights, facts: BatchFacts, end: RangeEnd) {
  if (end === 'low') return 0
  return (order.liquids ?? []).reduce((mol, use, index) => {
    const fact = factOf(facts.liquids, use.liquid)
    const fatG = liquidFatG(use, fact, weights.liquidGrams[index] ?? 0)
    return mol + alkaliEquivalents(fatG, fact.fatSaponificationValue)
  }, 0)
}

function alkaliMol({ order, weights }: Reckoning, end: RangeEnd, errors: Errors): number {
  return weighedAlkalis(order, weights.alkaliGrams).reduce((mol, { kind, grams }) => {
    const content =
      end === 'low' && errors.contents ? contentUpTo(order, kind) : contentOf(order, kind)
    const weighed = shifted(grams, opposite(end), errors.lyeG)
    return mol + (weighed * content) / ALKALI_MOLAR_MASS[kind]
  }, 0)
}

function acidMol({ order, weights, facts }: Reckoning, end: RangeEnd, errors: Errors): number {
  const shiftedGrams = weights.acidGrams.map((grams) => shifted(grams, end, errors.lyeG))
  return weighedAcids(order, shiftedGrams, facts).reduce((mol, { use, equivalentsMol }) => {
    return mol + equivalentsMol * (end === 'low' && errors.contents ? weakestPart(use, facts) : 1)
  }, 0)
}

/** The alkali that one error of the finer scale on every alkali in use is, mol. */
export function lyeErrorMol(order: BatchOrder, { lyeG }: Errors): number {
  return alkalisOf(order).reduce(
    (mol, kind) => mol + (lyeG * contentUpTo(order, kind)) / ALKALI_MOLAR_MASS[kind],
    0,
  )
}

function opposite(end: RangeEnd): RangeEnd {
  return end === 'low' ? 'high' : end === 'high' ? 'low' : end
}

/** A weight at the short end, as it is, or at the long end of an error; never below 0 g. */
function shifted(grams: number, end: RangeEnd, errorG: number): number {
  if (end === 'typical') return grams
  return Math.max(0, end === 'low' ? grams - errorG : grams + errorG)
}
