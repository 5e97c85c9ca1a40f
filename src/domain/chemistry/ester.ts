import { ATOMIC_MASS, MOLAR_MASS_GLYCEROL, MOLAR_MASS_WATER } from './atoms'

/** Acids that one glycerol binds. */
export const ACIDS_PER_TRIGLYCERIDE = 3

/** Molar mass in g/mol of the triglyceride of acids with the mean molar mass given: 3 M + glycerol - 3 water. */
export function triglycerideMolarMass(acidMolarMassGPerMol: number): number {
  return ACIDS_PER_TRIGLYCERIDE * (acidMolarMassGPerMol - MOLAR_MASS_WATER) + MOLAR_MASS_GLYCEROL
}

/**
 * The fatty alcohols of jojoba wax, each with one double bond, by mass percent of the alcohols.
 * Recalled from Wisniak 1987, The Chemistry and Technology of Jojoba Oil (memory).
 */
const JOJOBA_ALCOHOLS = [
  { carbons: 18, massPercent: 2 },
  { carbons: 20, massPercent: 44 },
  { carbons: 22, massPercent: 45 },
  { carbons: 24, massPercent: 9 },
] as const

/** Double bonds in each alcohol of jojoba wax. */
export const DOUBLE_BONDS_PER_WAX_ALCOHOL = 1

/** Molar mass in g/mol of a fatty alcohol with one double bond, CnH2nO. */
function monoenoicAlcoholMolarMass(carbons: number): number {
  return carbons * (ATOMIC_MASS.C + 2 * ATOMIC_MASS.H) + ATOMIC_MASS.O
}

/** Mean molar mass of the alcohols of jojoba wax in g/mol (312.5): mass over moles. */
export const MEAN_WAX_ALCOHOL_MOLAR_MASS = meanAlcoholMolarMass()

function meanAlcoholMolarMass(): number {
  const mass = JOJOBA_ALCOHOLS.reduce((sum, { massPercent }) => sum + massPercent, 0)
  const moles = JOJOBA_ALCOHOLS.reduce(
    (sum, { carbons, massPercent }) => sum + massPercent / monoenoicAlcoholMolarMass(carbons),
    0,
  )
  return mass / moles
}

/** Molar mass in g/mol of a wax of one acid and one jojoba alcohol: acid + alcohol - water. */
export function waxEsterMolarMass(acidMolarMassGPerMol: number): number {
  return acidMolarMassGPerMol + MEAN_WAX_ALCOHOL_MOLAR_MASS - MOLAR_MASS_WATER
}
