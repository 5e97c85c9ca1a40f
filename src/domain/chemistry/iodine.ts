import { WHOLE_PERCENT } from '../units'
import { MOLAR_MASS_IODINE } from './atoms'
import {
  ACIDS_PER_TRIGLYCERIDE,
  JOJOBA_REST,
  triglycerideMolarMass,
  waxGramsPerAcidMol,
  type WaxRest,
} from './ester'
import { fattyAcidMolarMass, type FattyAcid } from './fatty-acid'
import { acidPortions, massOf, molesOf, type AcidPortion, type AcidProfile } from './profile'
import type { AcidBinding } from './saponification'

/**
 * Iodine value in g iodine per 100 g of fat, calculated from its fatty acids.
 *
 * - triglyceride and free-acid: sum of factor × g acid per 100 g of acids, AOCS Cd 1c-85, with the
 *   factors calculated (see iodineFactor), so that acids outside its printed list count too;
 * - wax-ester: iodine for the double bonds of the acid and of what goes free beside it (`rest`; the
 *   alcohols of jojoba unless others are given), per mole of acid.
 *
 * `unsaponifiableFraction` (0 to 1, g per g of fat) dilutes the result; its own double bonds are
 * not counted, so the value runs low for fats rich in it, as the method warns. Conjugated bonds
 * count in full though the Wijs method under-reads them: nominal for pomegranate seed.
 */
export function calculatedIodineValue(
  profile: AcidProfile,
  acids: ReadonlyMap<string, FattyAcid>,
  unsaponifiableFraction: number,
  binding: AcidBinding,
  rest: WaxRest = JOJOBA_REST,
): number {
  const portions = acidPortions(profile, acids)
  if (binding === 'wax-ester') return waxIodineValue(portions, rest)
  const iodineG = portions.reduce(
    (sum, { acid, massG }) => sum + massG * iodineFactor(acid, binding),
    0,
  )
  return ((1 - unsaponifiableFraction) * iodineG * WHOLE_PERCENT) / massOf(portions)
}

/**
 * Iodine value of a pure acid, bound in its triglyceride or free, divided by 100: the factor that
 * AOCS Cd 1c-85 prints, such as 0.860 for 18:1, 1.732 for 18:2 and 2.616 for 18:3 in triglycerides.
 */
export function iodineFactor(acid: FattyAcid, binding: Exclude<AcidBinding, 'wax-ester'>): number {
  const acidMass = fattyAcidMolarMass(acid)
  const iodineG = acid.doubleBonds * MOLAR_MASS_IODINE
  return binding === 'free-acid'
    ? iodineG / acidMass
    : (ACIDS_PER_TRIGLYCERIDE * iodineG) / triglycerideMolarMass(acidMass)
}

function waxIodineValue(portions: readonly AcidPortion[], rest: WaxRest): number {
  const moles = molesOf(portions)
  const acidDoubleBonds = portions.reduce(
    (sum, { acid, massG, molarMassGPerMol }) =>
      sum + (acid.doubleBonds * massG) / molarMassGPerMol / moles,
    0,
  )
  const doubleBonds = acidDoubleBonds + rest.doubleBonds
  return (
    (WHOLE_PERCENT * MOLAR_MASS_IODINE * doubleBonds) /
    waxGramsPerAcidMol(massOf(portions) / moles, rest)
  )
}
