import { type Library, oilOf } from '../blend/library'
import type { NaturalRange } from '../blend/oil'
import { alkaliEquivalents } from '../chemistry/alkali'
import type { OilLot } from './order'

/** The lots of an order, by oil. */
export type Lots = Readonly<Record<string, OilLot>> | undefined

/**
 * How far a certificate's saponification value may be off where it does not say, as a part of the value.
 * An assumption for two laboratories: one analyst's two results agree within 0.5 % of their mean
 * (ISO 3657, recalled).
 */
const CERTIFICATE_TOLERANCE = 0.01

/** Which figure of a range. */
export type RangeEnd = 'low' | 'typical' | 'high'

/**
 * What an oil binds, mg KOH per g: the supplier's figure for the lot with its tolerance, else the
 * library's natural range.
 */
export function saponificationOf(oil: string, library: Library, lots: Lots): NaturalRange {
  const lot = lots?.[oil]
  if (lot?.saponificationValue === undefined) return oilOf(library, oil).saponificationValue
  const value = lot.saponificationValue
  const tolerance = lot.tolerance ?? value * CERTIFICATE_TOLERANCE
  return { low: value - tolerance, typical: value, high: value + tolerance }
}

/** Alkali the oils can bind in mol, at the low end, middle or high end of each oil's saponification value. */
export function fatEquivalents(
  oilGrams: Readonly<Record<string, number>>,
  library: Library,
  end: RangeEnd,
  lots: Lots = undefined,
): number {
  return Object.entries(oilGrams).reduce((mol, [oil, grams]) => {
    return mol + alkaliEquivalents(grams, saponificationOf(oil, library, lots)[end])
  }, 0)
}
