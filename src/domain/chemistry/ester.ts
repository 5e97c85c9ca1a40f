import { ATOMIC_MASS, MOLAR_MASS_GLYCEROL, MOLAR_MASS_WATER } from './atoms'

/** Acids that one glycerol binds. */
export const ACIDS_PER_TRIGLYCERIDE = 3

/** Molar mass in g/mol of the triglyceride of acids with the mean molar mass given: 3 M + glycerol - 3 water. */
export function triglycerideMolarMass(acidMolarMassGPerMol: number): number {
  return ACIDS_PER_TRIGLYCERIDE * (acidMolarMassGPerMol - MOLAR_MASS_WATER) + MOLAR_MASS_GLYCEROL
}

/**
 * The fatty alcohols of jojoba wax, each with one double bond, in g per 100 g of wax.
 * Source: a stored copy of a lipid-chemistry text on plant waxes (published); the shares that
 * Wisniak 1987, The Chemistry and Technology of Jojoba Oil, is remembered for (44 : 45 : 9) agree.
 */
const JOJOBA_ALCOHOLS = [
  { carbons: 20, massG: 22 },
  { carbons: 22, massG: 21 },
  { carbons: 24, massG: 4 },
] as const

/** What a wax sets free beside its acids: alcohols, and whatever of it was no ester, per mol of acid. */
export interface WaxRest {
  readonly gPerMolOfAcid: number
  /** Double bonds per mol of acid. */
  readonly doubleBonds: number
}

/** Molar mass in g/mol of a fatty alcohol with one double bond, CnH2nO. */
function monoenoicAlcoholMolarMass(carbons: number): number {
  return carbons * (ATOMIC_MASS.C + 2 * ATOMIC_MASS.H) + ATOMIC_MASS.O
}

/** Jojoba is all ester: one alcohol of 312.9 g/mol (mass over moles) with one double bond for each acid. */
export const JOJOBA_REST: WaxRest = { gPerMolOfAcid: meanAlcoholMolarMass(), doubleBonds: 1 }

function meanAlcoholMolarMass(): number {
  const mass = JOJOBA_ALCOHOLS.reduce((sum, { massG }) => sum + massG, 0)
  const moles = JOJOBA_ALCOHOLS.reduce(
    (sum, { carbons, massG }) => sum + massG / monoenoicAlcoholMolarMass(carbons),
    0,
  )
  return mass / moles
}

/** Grams of wax that hold one mol of acid: acid + what goes free beside it - water. */
export function waxGramsPerAcidMol(acidMolarMassGPerMol: number, rest: WaxRest): number {
  return acidMolarMassGPerMol + rest.gPerMolOfAcid - MOLAR_MASS_WATER
}
