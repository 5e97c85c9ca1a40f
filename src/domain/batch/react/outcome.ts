import { ALKALI_MOLAR_MASS, type AlkaliKind } from '../../chemistry/alkali'
import { MOLAR_MASS_GLYCEROL, MOLAR_MASS_WATER } from '../../chemistry/atoms'
import { ACIDS_PER_TRIGLYCERIDE } from '../../chemistry/ester'
import type { FatPart } from './fat-parts'

/** What one fat became. Grams. */
export interface FatOutcome {
  readonly part: FatPart
  /** The part of it that met alkali, 0 to 1. */
  readonly reacted: number
  readonly unreactedG: number
  /** Soap of each alkali. */
  readonly soapG: Readonly<Record<AlkaliKind, number>>
  readonly glycerolG: number
  /** Alcohols and what else goes free of a wax; they stay in the bar. */
  readonly waxAlcoholG: number
  /** Water its free acids made. */
  readonly waterG: number
  /** Fatty acids, wax alcohols and unsaponifiables, bound or not. */
  readonly fattyMatterG: number
}

/** How the alkali of a batch is shared out. */
export interface Reaction {
  /** Alkali that finds fat, mol. */
  readonly reactedMol: number
  /** Alkali left when all fat is soap, mol. */
  readonly freeMol: number
  /** The part of fat in the pot, and of fat stirred in late, that reacts. */
  readonly cookFraction: number
  readonly lateFraction: number
}

/**
 * Who gets the alkali that acids leave over (mol): all fat in the pot alike, then fat stirred in late,
 * then none. Alike is how worked examples reckon it; in truth free fatty acids go first, which shifts
 * glycerol by less than the superfat's part of it.
 */
export function reactionOf(parts: readonly FatPart[], alkaliMol: number): Reaction {
  const binds = (late: boolean) =>
    parts.filter((part) => part.late === late).reduce((mol, part) => mol + part.equivalentsMol, 0)
  const [cookMol, lateMol] = [binds(false), binds(true)]
  const toCook = Math.min(Math.max(0, alkaliMol), cookMol)
  const toLate = Math.min(Math.max(0, alkaliMol) - toCook, lateMol)
  return {
    reactedMol: toCook + toLate,
    freeMol: Math.max(0, alkaliMol) - toCook - toLate,
    cookFraction: cookMol > 0 ? toCook / cookMol : 0,
    lateFraction: lateMol > 0 ? toLate / lateMol : 0,
  }
}

/**
 * What a fat of whose binding part the fraction f reacts gives, in g, with n = f × its mol and x_i the alkalis' parts:
 *
 * - triglyceride: fat + 3 MOH → 3 soap + glycerol; glycerol n·92.09/3, no water
 * - free acid: acid + MOH → soap + water; water n·18.02
 * - wax: wax + MOH → soap + alcohol; alcohol, with what was no ester, n·312.9 for jojoba
 *
 * Soap is what is left of fat + alkali when those are taken away; unsaponifiables stay counted in it.
 */
export function fatOutcome(
  part: FatPart,
  { cookFraction, lateFraction }: Reaction,
  shares: Readonly<Record<AlkaliKind, number>>,
): FatOutcome {
  const fraction = part.late ? lateFraction : cookFraction
  const reacted = fraction * part.reactingPart
  const mol = part.equivalentsMol * fraction
  const glycerolG =
    part.kind === 'triglyceride' ? (mol * MOLAR_MASS_GLYCEROL) / ACIDS_PER_TRIGLYCERIDE : 0
  const waterG = part.kind === 'free-acid' ? mol * MOLAR_MASS_WATER : 0
  const waxAlcoholG = part.kind === 'wax-ester' ? mol * part.waxRest.gPerMolOfAcid : 0
  const massWithoutMetalG = part.grams * reacted - glycerolG - waterG - waxAlcoholG
  const soapOf = (kind: AlkaliKind) =>
    shares[kind] * (massWithoutMetalG + mol * ALKALI_MOLAR_MASS[kind])
  return {
    part,
    reacted,
    unreactedG: part.grams * (1 - reacted),
    soapG: { naoh: soapOf('naoh'), koh: soapOf('koh') },
    glycerolG,
    waxAlcoholG,
    waterG,
    fattyMatterG: part.grams * (1 - reacted) + fattyMatterFreed(part, mol),
  }
}

/**
 * Fatty acids (with unsaponifiables and wax alcohols) that the reacted part would give with mineral acid:
 * a triglyceride gives its mass + 3 water − glycerol, a wax its mass + 1 water, an acid itself.
 */
function fattyMatterFreed(part: FatPart, mol: number): number {
  const reactedG =
    part.equivalentsMol > 0 ? (part.grams * part.reactingPart * mol) / part.equivalentsMol : 0
  if (part.kind === 'free-acid') return reactedG
  const waterG = mol * MOLAR_MASS_WATER
  if (part.kind === 'wax-ester') return reactedG + waterG
  return reactedG + waterG - (mol * MOLAR_MASS_GLYCEROL) / ACIDS_PER_TRIGLYCERIDE
}
