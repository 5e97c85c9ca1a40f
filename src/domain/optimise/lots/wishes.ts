import { type Blend, weightAverage } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { type Brief, pricesOf } from '../brief/brief'
import type { Side } from '../brief/limits'
import { oilRange } from './lot-span'

/**
 * Whether the wish on a measure must hold for any lot of the oils: in a robust brief, of all measures
 * that vary from lot to lot, unless the wish is about typical lots only.
 */
export function heldForAnyLot({ robust, measures }: Brief, measure: string): boolean {
  return robust === true && measure !== COST && measures[measure]?.typicalOnly !== true
}

/**
 * What an oil counts for on one side of the wish on a measure, as a function of the oil's id, in the
 * measure's unit: its typical value, or, where the wish must hold for any lot, the least it can have for
 * `min` and the most for `max`.
 */
export function wishedValue(
  brief: Brief,
  library: Library,
  measure: string,
  side: Side,
): (oil: string) => number {
  const prices = measure === COST ? pricesOf(brief) : {}
  const lots = heldForAnyLot(brief, measure) ? (side === 'min' ? 'low' : 'high') : 'typical'
  return (oil) => oilRange(library, prices, measure, oil)[lots]
}

/** What a blend comes to on one side of the wish on a measure, in the measure's unit. */
export function valueUnderWish(
  brief: Brief,
  library: Library,
  measure: string,
  side: Side,
  blend: Blend,
): number {
  return weightAverage(blend, wishedValue(brief, library, measure, side))
}
