import { GRAMS_PER_KG } from '../units'
import { MOLAR_MASS_KOH } from './atoms'

/*
 * Two ways to leave fat over, and what each "5 %" is a part of. T is what the fat can bind, in mol.
 *
 * - Lye discount s: alkali = T·(1 − s). The part s of the *equivalents* gets no alkali.
 * - Extra fat e (g) beside W g of oils, alkali for the oils alone: the part of the equivalents is
 *   T_e / (T + T_e); of the weight of all fat e / (W + e); of the oils e / W. Three figures, one batch.
 */

/** Which whole an extra fat is a percentage of. */
export type ExtraFatOf = 'equivalents' | 'allFat' | 'oils'

/** What an extra fat is reckoned against. */
export interface BaseFat {
  /** Weight of the oils in g. */
  readonly oilG: number
  /** What the oils bind, in mol. */
  readonly equivalentsMol: number
}

/**
 * Extra fat in g that makes up a fraction s (0 to under 1) of the whole named:
 * equivalents e = s/(1 − s) × T × 56105 / SV, all fat e = W·s/(1 − s), oils e = W·s.
 * `saponificationValue` is that of the extra fat, mg KOH per g.
 */
export function extraFatGrams(
  fraction: number,
  of: ExtraFatOf,
  { oilG, equivalentsMol }: BaseFat,
  saponificationValue: number,
): number {
  const ofRest = fraction / (1 - fraction)
  if (of === 'oils') return oilG * fraction
  if (of === 'allFat') return oilG * ofRest
  return (ofRest * equivalentsMol * MOLAR_MASS_KOH * GRAMS_PER_KG) / saponificationValue
}

/**
 * The part of all fat's equivalents left without alkali, as a fraction; below 0 it is alkali left
 * without fat: s = 1 − (alkali − what acids took) / T, all in mol.
 */
export function superfatFraction(alkaliMol: number, acidMol: number, fatMol: number): number {
  return 1 - (alkaliMol - acidMol) / fatMol
}
