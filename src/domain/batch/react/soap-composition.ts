import type { Oil } from '../../blend/oil'
import type { AlkaliKind } from '../../chemistry/alkali'
import { ATOMIC_MASS } from '../../chemistry/atoms'
import { fattyAcidMolarMass, type FattyAcid } from '../../chemistry/fatty-acid'
import { acidPortions, molesOf, typicalProfile } from '../../chemistry/profile'
import { percentFromFraction } from '../../units'
import type { Outcome } from './balance'

/** One soap of the bar, in theory. */
export interface SoapShare {
  readonly acid: string
  readonly alkali: AlkaliKind
  readonly grams: number
  /** Percent of all soap by weight. */
  readonly percent: number
}

/** Mass that the metal adds to a fatty acid in the place of its hydrogen, g/mol. */
const METAL_FOR_HYDROGEN: Readonly<Record<AlkaliKind, number>> = {
  naoh: ATOMIC_MASS.Na - ATOMIC_MASS.H,
  koh: ATOMIC_MASS.K - ATOMIC_MASS.H,
}

/**
 * The soaps of the bar by fatty acid, heaviest first: each oil's bound mol shared over its typical acids by
 * mol, times M(acid) + M(metal) − M(H). Fat of milk and the like is left out. Every acid is taken to react
 * alike and typical profiles stand for the lots in hand: a theory, not an analysis. Its sum differs from the
 * balance's soap by the oil's unsaponifiables and by how far its profile and saponification value agree.
 */
export function soapComposition(
  { fats, alkaliShares }: Outcome,
  oils: ReadonlyMap<string, Oil>,
  acids: ReadonlyMap<string, FattyAcid>,
): SoapShare[] {
  const mol = new Map<FattyAcid, number>()
  for (const { part, reacted } of fats) {
    const oil = part.from === 'oil' ? oils.get(part.id) : undefined
    if (!oil) continue
    const portions = acidPortions(typicalProfile(oil.acids), acids)
    const all = molesOf(portions)
    for (const { acid, massG, molarMassGPerMol } of portions) {
      const bound = part.reactingPart > 0 ? reacted / part.reactingPart : 0
      const share = (part.equivalentsMol * bound * massG) / molarMassGPerMol / all
      mol.set(acid, (mol.get(acid) ?? 0) + share)
    }
  }
  return asShares(mol, alkaliShares)
}

function asShares(
  mol: ReadonlyMap<FattyAcid, number>,
  shares: Outcome['alkaliShares'],
): SoapShare[] {
  const rows = [...mol].flatMap(([acid, n]) =>
    (['naoh', 'koh'] as const).map((alkali) => {
      const molarMass = fattyAcidMolarMass(acid) + METAL_FOR_HYDROGEN[alkali]
      return { acid: acid.id, alkali, grams: n * shares[alkali] * molarMass }
    }),
  )
  const total = rows.reduce((g, row) => g + row.grams, 0)
  return rows
    .filter(({ grams }) => grams > 0)
    .map((row) => ({ ...row, percent: percentFromFraction(row.grams / total) }))
    .sort((a, b) => b.grams - a.grams)
}
