import { ATOMIC_MASS } from './atoms'

/**
 * How sure a figure is: read in its source, derived by a stated rule, trade habit, recalled, or our own
 * assumption. The last two stand only in oils of a maker's own: read off a certificate, or stated without one.
 */
export type Basis =
  'published' | 'derived' | 'common practice' | 'memory' | 'assumption' | 'certificate' | 'own'

/** A fatty acid as a molecule; all that the chemistry needs of it. */
export interface FattyAcid {
  readonly id: string
  readonly name: string
  /** Trade shorthand, such as C18:1 n-9. */
  readonly shorthand: string
  readonly carbons: number
  readonly doubleBonds: number
  readonly hydroxyls: number
  readonly epoxides: number
  /** Rings of carbon, which resin acids have and fatty acids have not; left out for none. */
  readonly rings?: number | undefined
  /** Melting point of the pure acid in °C; null where none was found. */
  readonly meltingPointC: number | null
  /** Methylene groups between two cis double bonds, the places where oxidation starts. */
  readonly bisAllylic: number
}

/**
 * Molar mass of a fatty acid in g/mol from its formula: CnH2n-2dO2, one oxygen more per hydroxyl,
 * per epoxide one oxygen more and two hydrogens less, and per ring two hydrogens less.
 */
export function fattyAcidMolarMass(
  acid: Pick<FattyAcid, 'carbons' | 'doubleBonds' | 'hydroxyls' | 'epoxides' | 'rings'>,
): number {
  const hydrogens = 2 * (acid.carbons - acid.doubleBonds - acid.epoxides - (acid.rings ?? 0))
  const oxygens = 2 + acid.hydroxyls + acid.epoxides
  return acid.carbons * ATOMIC_MASS.C + hydrogens * ATOMIC_MASS.H + oxygens * ATOMIC_MASS.O
}
