import { MG_PER_GRAM } from '../units'
import { MOLAR_MASS_KOH, MOLAR_MASS_NAOH } from './atoms'

/** The two alkalis bars and soft soaps are made with. */
export type AlkaliKind = 'naoh' | 'koh'

/** The alkalis as a maker calls them, within a sentence and at the head of a line. */
export const ALKALI_NAMES = { naoh: 'sodium hydroxide', koh: 'potassium hydroxide' } as const
export const ALKALI_TITLES = { naoh: 'Sodium hydroxide', koh: 'Potassium hydroxide' } as const

/** The alkalis by their formulas. */
export const ALKALI_FORMULAS = { naoh: 'NaOH', koh: 'KOH' } as const

/** Molar mass of each alkali in g/mol. */
export const ALKALI_MOLAR_MASS: Readonly<Record<AlkaliKind, number>> = {
  naoh: MOLAR_MASS_NAOH,
  koh: MOLAR_MASS_KOH,
}

/**
 * Alkali that a mass of fat can bind, in mol: its saponification value is mg KOH per g of fat (ISO 3657),
 * so mol = g fat × SV / (1000 × M(KOH)).
 */
export function alkaliEquivalents(fatG: number, saponificationValue: number): number {
  return (fatG * saponificationValue) / (MG_PER_GRAM * MOLAR_MASS_KOH)
}

/** Pure alkali in g for so many mol. */
export function alkaliGrams(equivalentsMol: number, kind: AlkaliKind): number {
  return equivalentsMol * ALKALI_MOLAR_MASS[kind]
}

/** Mol of alkali in a weighed mass of the given purity (fraction 0 to 1). */
export function equivalentsIn(weighedG: number, purityFraction: number, kind: AlkaliKind): number {
  return (weighedG * purityFraction) / ALKALI_MOLAR_MASS[kind]
}
