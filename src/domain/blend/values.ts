import { type Blend, type Prices, weightAverage } from './blend'
import { type Library, measureOf, oilOf } from './library'
import { COST, measureOfOil } from './measure'

/**
 * A measure as a function of an oil's id: points, or money per kg for cost. The function throws where
 * a price is missing.
 */
export function valueOfOils(
  library: Library,
  prices: Prices,
  measureId: string,
): (oil: string) => number {
  const measure = measureOf(library, measureId)
  if ('weights' in measure) return (oil) => measureOfOil(measure, oilOf(library, oil))
  return (oil) => {
    const price = prices[oil]
    if (price === undefined) throw new Error(`Oil ${oil} has no price, so its blend has no cost`)
    return price
  }
}

/** Value of a measure for one oil: points, or money per kg for cost. Throws when a price is missing. */
export function oilValue(library: Library, prices: Prices, measureId: string, oil: string): number {
  return valueOfOils(library, prices, measureId)(oil)
}

/** Value of a measure for a blend: the weight average of its oils' values. */
export function blendValue(
  library: Library,
  prices: Prices,
  measureId: string,
  blend: Blend,
): number {
  return weightAverage(blend, valueOfOils(library, prices, measureId))
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
