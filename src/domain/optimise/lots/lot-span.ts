import { type Blend, type Prices, weightAverage } from '../../blend/blend'
import { type Library, measureOf, oilOf } from '../../blend/library'
import type { NaturalRange } from '../../blend/oil'
import { oilValue } from '../../blend/values'
import { worstOfOil } from './worst-case'
import type { Ends } from '../../interval'

/**
 * The least, typical and most of a measure for one oil over all its lots, in the measure's unit. Cost is
 * as the maker states it and does not vary: all three are the price.
 */
export function oilRange(
  library: Library,
  prices: Prices,
  measureId: string,
  oil: string,
): NaturalRange {
  const measure = measureOf(library, measureId)
  if ('weights' in measure) return worstOfOil(measure, oilOf(library, oil))
  const price = oilValue(library, prices, measureId, oil)
  return { low: price, typical: price, high: price }
}

/**
 * The least and most of a measure for a blend, whatever lots its oils come from, in the measure's
 * unit. Exact, as the lots of different oils have nothing to do with each other.
 */
export function lotSpan(library: Library, prices: Prices, measureId: string, blend: Blend): Ends {
  const end = (side: 'low' | 'high') =>
    weightAverage(blend, (oil) => oilRange(library, prices, measureId, oil)[side])
  return { low: end('low'), high: end('high') }
}
