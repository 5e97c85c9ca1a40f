import { type Blend, type Prices, weightAverage } from './blend'
import { type Library, measureOf, oilOf } from './library'
import { COST, measureOfOil } from './measure'

/** Value of a measure for one oil: points, or money per kg for cost. Throws when a price is missing. */
export function oilValue(library: Library, prices: Prices, measureId: string, oil: string): number {
  const measure = measureOf(library, measureId)
  if ('weights' in measure) return measureOfOil(measure, oilOf(library, oil))
  const price = prices[oil]
  if (price === undefined) throw new Error(`Oil ${oil} has no price, so its blend has no cost`)
  return price
}

/** Value of a measure for a blend: the weight average of its oils' values. */
export function blendValue(
  library: Library,
  prices: Prices,
  measureId: string,
  blend: Blend,
): number {
  return weightAverage(blend, (oil) => oilValue(library, prices, measureId, oil))
}

/** All measures of a blend by id; cost only where every oil of the blend has a price. */
export function blendValues(
  library: Library,
  prices: Prices,
  blend: Blend,
): Readonly<Record<string, number>> {
  const priced = Object.entries(blend).every(([oil, share]) => share === 0 || oil in prices)
  const measures = library.measures.filter((measure) => measure.id !== COST || priced)
  return Object.fromEntries(measures.map(({ id }) => [id, blendValue(library, prices, id, blend)]))
}
