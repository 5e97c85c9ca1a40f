/**
 * Abridged standard atomic weights, g/mol.
 * Source: IUPAC Commission on Isotopic Abundances and Atomic Weights, standard atomic weights 2021
 * (abridged to five figures where an interval is given).
 */
export const ATOMIC_MASS = {
  H: 1.008,
  C: 12.011,
  O: 15.999,
  Na: 22.99,
  K: 39.098,
  I: 126.904,
} as const

/** Molar mass of sodium hydroxide, NaOH, in g/mol (39.997). */
export const MOLAR_MASS_NAOH = ATOMIC_MASS.Na + ATOMIC_MASS.O + ATOMIC_MASS.H

/** Molar mass of potassium hydroxide, KOH, in g/mol; the older and wider 56.1 of AOCS Cd 3 rounds it. */
export const MOLAR_MASS_KOH = ATOMIC_MASS.K + ATOMIC_MASS.O + ATOMIC_MASS.H

/** Molar mass of water, H2O, in g/mol. */
export const MOLAR_MASS_WATER = 2 * ATOMIC_MASS.H + ATOMIC_MASS.O

/** Molar mass of glycerol, C3H8O3, in g/mol. */
export const MOLAR_MASS_GLYCEROL = 3 * ATOMIC_MASS.C + 8 * ATOMIC_MASS.H + 3 * ATOMIC_MASS.O

/** Molar mass of iodine, I2, in g/mol. */
export const MOLAR_MASS_IODINE = 2 * ATOMIC_MASS.I
