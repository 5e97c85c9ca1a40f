import { MG_PER_GRAM } from '../units'
import { MOLAR_MASS_KOH } from './atoms'
import {
  ACIDS_PER_TRIGLYCERIDE,
  JOJOBA_REST,
  triglycerideMolarMass,
  waxGramsPerAcidMol,
  type WaxRest,
} from './ester'
import type { FattyAcid } from './fatty-acid'
import { meanAcidMolarMass, type AcidProfile } from './profile'

/** How the acids of a fat are bound: to glycerol, to a fatty alcohol, or not at all. */
export type AcidBinding = 'triglyceride' | 'wax-ester' | 'free-acid'

/**
 * Saponification value in mg KOH per g of fat, calculated from its fatty acids.
 *
 * - triglyceride: 3 × 56106 / (3 M + glycerol - 3 water), AOCS Cd 3a-94 with unrounded masses
 *   (the method prints 56.1, 92.09 and 18; the difference is below 0.1);
 * - free-acid: 56106 / M, which is the acid value;
 * - wax-ester: 56106 / (M + rest - water), where `rest` is what goes free beside each mol of acid:
 *   the alcohols of jojoba unless others are given.
 *
 * `unsaponifiableFraction` (0 to 1, g per g of fat) takes no alkali and dilutes the result. A wax
 * ester ignores it: it is what `rest` counts already.
 * Assumes no free acids, mono- or diglycerides in a triglyceride; hydroxyls take no alkali.
 */
export function calculatedSaponificationValue(
  profile: AcidProfile,
  acids: ReadonlyMap<string, FattyAcid>,
  unsaponifiableFraction: number,
  binding: AcidBinding,
  rest: WaxRest = JOJOBA_REST,
): number {
  const acidMass = meanAcidMolarMass(profile, acids)
  const saponifiableFraction = 1 - unsaponifiableFraction
  const kohMg = MOLAR_MASS_KOH * MG_PER_GRAM
  switch (binding) {
    case 'triglyceride':
      return (
        (saponifiableFraction * ACIDS_PER_TRIGLYCERIDE * kohMg) / triglycerideMolarMass(acidMass)
      )
    case 'free-acid':
      return (saponifiableFraction * kohMg) / acidMass
    case 'wax-ester':
      return kohMg / waxGramsPerAcidMol(acidMass, rest)
  }
}
