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

/** Double bonds in each alcohol of jojoba wax. */
export const DOUBLE_BONDS_PER_WAX_ALCOHOL = 1

/** Molar mass in g/mol of a fatty alcohol with one double bond, CnH2nO. */
function monoenoicAlcoholMolarMass(carbons: number): number {
  return carbons * (ATOMIC_MASS.C + 2 * ATOMIC_MASS.H) + ATOMIC_MASS.O
}

/** Mean molar mass of the alcohols of jojoba wax in g/mol (312.9): mass over moles. */
export const MEAN_WAX_ALCOHOL_MOLAR_MASS = meanAlcoholMolarMass()

function meanAlcoholMolarMass(): number {
  const mass = JOJOBA_ALCOHOLS.reduce((sum, { massG }) => sum + massG, 0)
  const moles = JOJOBA_ALCOHOLS.reduce(
    (sum, { carbons, massG }) => sum + massG / monoenoicAlcoholMolarMass(carbons),
    0,
  )
  return mass / moles
}

/** Molar mass in g/mol of a wax of one acid and one jojoba alcohol: acid + alcohol - water. */
export function waxEsterMolarMass(acidMolarMassGPerMol: number): number {
  return acidMolarMassGPerMol + MEAN_WAX_ALCOHOL_MOLAR_MASS - MOLAR_MASS_WATER
}
