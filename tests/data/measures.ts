import { library } from '../../src/data/library'
import { measureOfOil, type AcidMeasure } from '../../src/domain/blend/measure'
import { oilOf } from './oils'

/** The measures made of fatty acids; cost is made of prices. */
export const acidMeasures: readonly AcidMeasure[] = library.measures.filter(
  (measure): measure is AcidMeasure => measure.unit === 'points',
)

/** The acid measure of that id; throws when there is none. */
export function acidMeasureOf(id: string): AcidMeasure {
  const measure = acidMeasures.find((one) => one.id === id)
  if (!measure) throw new Error(`The library has no acid measure ${id}`)
  return measure
}

/** Points of an oil; `oxidation` is 100 less the points of keeping. */
export function pointsOfOil(measureId: string, oilId: string): number {
  if (measureId === 'oxidation') return 100 - pointsOfOil('keeping', oilId)
  return measureOfOil(acidMeasureOf(measureId), oilOf(oilId))
}

/** Points of a bar as the weight average of its oils; shares in percent of oil weight. */
export function pointsOfBar(measureId: string, blend: Readonly<Record<string, number>>): number {
  return Object.entries(blend).reduce(
    (sum, [oil, percent]) => sum + (percent / 100) * pointsOfOil(measureId, oil),
    0,
  )
}
