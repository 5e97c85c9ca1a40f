import { fattyAcidMolarMass, type FattyAcid } from './fatty-acid'

/** Fatty acids by acid id, in g per 100 g of fatty acids; sums near 100 are taken as parts of their own sum. */
export type AcidProfile = Readonly<Record<string, number>>

/** One acid of a profile: g and mol in as many grams of acids as the profile sums to. */
export interface AcidPortion {
  readonly acid: FattyAcid
  readonly massG: number
  readonly molarMassGPerMol: number
}

/** The typical shares of an oil's acids, in g per 100 g of fatty acids. */
export function typicalProfile(
  acids: Readonly<Record<string, { readonly typical: number }>>,
): AcidProfile {
  return Object.fromEntries(Object.entries(acids).map(([id, { typical }]) => [id, typical]))
}

/** A profile with its molecules looked up; throws when an acid is not listed or the profile is empty. */
export function acidPortions(
  profile: AcidProfile,
  acids: ReadonlyMap<string, FattyAcid>,
): readonly AcidPortion[] {
  const portions = Object.entries(profile).map(([id, massG]) => {
    const acid = acids.get(id)
    if (!acid) throw new Error(`Fatty acid ${id} is not listed: add it to data/fatty-acids.json`)
    return { acid, massG, molarMassGPerMol: fattyAcidMolarMass(acid) }
  })
  if (massOf(portions) <= 0) throw new Error('A profile without fatty acids has no molar mass')
  return portions
}

/** Grams of fatty acids in all portions together. */
export function massOf(portions: readonly AcidPortion[]): number {
  return portions.reduce((sum, { massG }) => sum + massG, 0)
}

/** Moles of fatty acids in all portions together. */
export function molesOf(portions: readonly AcidPortion[]): number {
  return portions.reduce((sum, { massG, molarMassGPerMol }) => sum + massG / molarMassGPerMol, 0)
}

/**
 * Mean molar mass of a profile's fatty acids in g/mol. Shares are by mass, so it is the mass over
 * the moles (a harmonic mean), as AOCS Cd 3a-94 takes it; about 206 for coconut, 278 for olive.
 */
export function meanAcidMolarMass(
  profile: AcidProfile,
  acids: ReadonlyMap<string, FattyAcid>,
): number {
  const portions = acidPortions(profile, acids)
  return massOf(portions) / molesOf(portions)
}
