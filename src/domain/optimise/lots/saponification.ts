import { type Blend, weightAverage } from '../../blend/blend'
import { type Library, oilOf } from '../../blend/library'
import type { Oil } from '../../blend/oil'
import { fattyAcidMolarMass, type FattyAcid } from '../../chemistry/fatty-acid'
import { calculatedSaponificationValue } from '../../chemistry/saponification'
import { fractionFromPerMille } from '../../units'
import { type Lot, profileOf } from './lot'
import { lotRangeOf } from './lot-range'
import { extremeAcids } from './worst-case'
import type { Ends } from '../../interval'

/** Fatty acids as molecules, by id. */
export type Acids = ReadonlyMap<string, FattyAcid>

/**
 * Saponification value of a lot in mg KOH per g: calculated from its acids less its unsaponifiables
 * and held in the oil's stated range, by the rule that gives data/oils.json its typical values. So
 * the range that batches are reckoned with (`fatEquivalents`) holds every lot.
 */
export function lotSaponificationValue(oil: Oil, lot: Lot, acids: Acids): number {
  const { low, high } = oil.saponificationValue
  const unsaponifiable = fractionFromPerMille(lot.unsaponifiableGPerKg)
  const value = calculatedSaponificationValue(
    profileOf(oil, lot),
    acids,
    unsaponifiable,
    oil.kind,
    oil.waxRest,
  )
  return Math.min(Math.max(value, low), high)
}

/**
 * The least and most saponification value over all lots of an oil, in mg KOH per g. Exact: the value
 * rises with the moles of acid in 100 g, Σ share / molar mass, whatever the acids are bound to, and
 * falls with the unsaponifiables; so its ends are those of a weighted sum over the lots.
 */
export function saponificationOfOil(oil: Oil, acids: Acids): Ends {
  const range = lotRangeOf(oil)
  const moles = Float64Array.from(range.acids, (id) => {
    const acid = acids.get(id)
    if (!acid) throw new Error(`Fatty acid ${id} is not listed: add it to data/fatty-acids.json`)
    return 1 / fattyAcidMolarMass(acid)
  })
  const { low, high } = range.unsaponifiableGPerKg
  const end = (side: 'low' | 'high', unsaponifiableGPerKg: number) =>
    lotSaponificationValue(
      oil,
      { acids: extremeAcids(range, moles, side), unsaponifiableGPerKg },
      acids,
    )
  return { low: end('low', high), high: end('high', low) }
}

/** The least and most saponification value of a blend over all lots of its oils, in mg KOH per g. */
export function saponificationSpan(library: Library, acids: Acids, blend: Blend): Ends {
  const end = (side: 'low' | 'high') =>
    weightAverage(blend, (oil) => saponificationOfOil(oilOf(library, oil), acids)[side])
  return { low: end('low'), high: end('high') }
}
