import { MOLAR_MASS_WATER } from './atoms'
import { type Formula, molarMassOf } from './formula'

/** What an acid, or a salt that takes hydroxide like one, is made of (data/acids.json). */
export interface AcidMolecule {
  /** Atoms without water of crystallisation. */
  readonly formula: Formula
  /** Groups that hydroxide neutralises, per molecule. */
  readonly acidGroups: number
  /** Molecules of water in its crystals, per molecule. */
  readonly crystalWaters: number
}

/** Molar mass in g/mol as weighed, with its water of crystallisation; 210.14 for citric monohydrate. */
export function acidMolarMass({ formula, crystalWaters }: AcidMolecule): number {
  return molarMassOf(formula) + crystalWaters * MOLAR_MASS_WATER
}

/**
 * Hydroxide in mol that a mass of acid takes: HnA + n OH⁻ → Aⁿ⁻ + n H2O, so mol = groups × g / M.
 * `acidG` is pure acid in g, its water of crystallisation included.
 */
export function acidEquivalents(acidG: number, acid: AcidMolecule): number {
  return (acid.acidGroups * acidG) / acidMolarMass(acid)
}

/** Water in g that its crystals set free. */
export function crystalWaterGrams(acidG: number, acid: AcidMolecule): number {
  return (acidG * acid.crystalWaters * MOLAR_MASS_WATER) / acidMolarMass(acid)
}

/** Water in g that so many mol of hydroxide make with an acid: one molecule for each. */
export function neutralisationWaterGrams(equivalentsMol: number): number {
  return equivalentsMol * MOLAR_MASS_WATER
}
