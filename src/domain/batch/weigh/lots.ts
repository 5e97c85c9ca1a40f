import { certificateRange } from '../../blend/certificate-range'
import { type Library, oilOf } from '../../blend/library'
import type { NaturalRange, Oil } from '../../blend/oil'
import { alkaliEquivalents } from '../../chemistry/alkali'
import type { BatchOrder, OilLot } from '../order/order'

/** The lots of an order, by oil. */
export type Lots = Readonly<Record<string, OilLot>> | undefined

/** What decides how much alkali an oil takes: its lot, and how it is made to soap. */
export type Making = Pick<BatchOrder, 'lots' | 'process'>

/** Which figure of a range. */
export type RangeEnd = 'low' | 'typical' | 'high'

/**
 * The saponification value of an oil, mg KOH per g: the supplier's figure for the lot with its tolerance
 * (at least half a percent, whatever is stated), else the library's natural range.
 */
export function saponificationOf(oil: string, library: Library, lots: Lots): NaturalRange {
  const lot = lots?.[oil]
  if (lot?.saponificationValue === undefined) return oilOf(library, oil).saponificationValue
  return certificateRange(lot.saponificationValue, lot.tolerance)
}

const ALL_OF_IT: NaturalRange = { low: 1, typical: 1, high: 1 }

/** A wax of which nothing is known may bind nothing at all. */
const ANY_OF_IT: NaturalRange = { low: 0, typical: 1, high: 1 }

/** The part of an oil that alkali reaches, 0 to 1: all of a fat, little of a wax. */
export function reactingPart({ reacts, kind }: Oil, { process = 'cold' }: Making): NaturalRange {
  return reacts?.[process] ?? (kind === 'wax-ester' ? ANY_OF_IT : ALL_OF_IT)
}

/**
 * What an oil really binds, mg KOH per g: its saponification value times the part that alkali reaches.
 * At the low end a wax binds nothing.
 */
export function bindsOf(oil: string, library: Library, making: Making): NaturalRange {
  const value = saponificationOf(oil, library, making.lots)
  const part = reactingPart(oilOf(library, oil), making)
  return {
    low: value.low * part.low,
    typical: value.typical * part.typical,
    high: value.high * part.high,
  }
}

/** Alkali the oils can bind in mol, at the low end, middle or high end of what each oil binds. */
export function fatEquivalents(
  oilGrams: Readonly<Record<string, number>>,
  library: Library,
  end: RangeEnd,
  making: Making = {},
): number {
  return Object.entries(oilGrams).reduce((mol, [oil, grams]) => {
    return mol + alkaliEquivalents(grams, bindsOf(oil, library, making)[end])
  }, 0)
}
