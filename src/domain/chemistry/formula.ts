import { ATOMIC_MASS } from './atoms'

/** Atoms of a molecule, by element. */
export type Formula = Readonly<Partial<Record<'C' | 'H' | 'O' | 'Na', number>>>

/**
 * Molar mass in g/mol of a formula: Σ atoms × standard atomic weight (`atoms.ts`).
 * Citric acid, C6H8O7, is 192.12.
 */
export function molarMassOf(formula: Formula): number {
  const { C = 0, H = 0, O = 0, Na = 0 } = formula
  return C * ATOMIC_MASS.C + H * ATOMIC_MASS.H + O * ATOMIC_MASS.O + Na * ATOMIC_MASS.Na
}
