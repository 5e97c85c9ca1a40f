import type { AcidMeasure } from '../../blend/measure'
import type { Oil } from '../../blend/oil'
import type { AcidProfile } from '../../chemistry/profile'
import { fractionFromPerMille, WHOLE_PERCENT } from '../../units'
import { type LotRange, lotRangeOf } from './lot-range'

/** One delivery of an oil, as the analyst would find it. */
export interface Lot {
  /** g per 100 g of fatty acids, in the order of the oil's LotRange; adding to 100. */
  readonly acids: Float64Array
  readonly unsaponifiableGPerKg: number
}

/**
 * A measure as a function of a lot of one oil, in points: the same sum as `measureOfOil`, with the
 * lot's figures in place of the typical ones. Throws where the measure has no weight for an acid.
 */
export function lotValue(measure: AcidMeasure, oil: Oil): (lot: Lot) => number {
  const weights = weightsOf(measure, oil, lotRangeOf(oil))
  const { offset, unsaponifiable } = measure
  return ({ acids, unsaponifiableGPerKg }) => {
    const points = offset + weightedSum(weights, acids)
    if (!unsaponifiable) return points
    const gPer100G = fractionFromPerMille(unsaponifiableGPerKg) * WHOLE_PERCENT
    return points + Math.min(unsaponifiable.pointsPerGPer100G * gPer100G, unsaponifiable.cap)
  }
}

/** A measure's points per g of each acid in 100 g, in the order of the oil's LotRange. */
export function weightsOf(measure: AcidMeasure, oil: Oil, { acids }: LotRange): Float64Array {
  return Float64Array.from(acids, (acid) => {
    const found = measure.weights[acid]
    if (!found) throw new Error(`Measure ${measure.id} has no weight for ${acid} of ${oil.id}`)
    return found.weight
  })
}

/** A lot's acids by id, in g per 100 g of fatty acids. */
export function profileOf(oil: Oil, { acids }: Lot): AcidProfile {
  return Object.fromEntries(lotRangeOf(oil).acids.map((acid, i) => [acid, acids[i] ?? NaN]))
}

/** Σ weight × share. */
export function weightedSum(weights: Float64Array, shares: Float64Array): number {
  let sum = 0
  for (let i = 0; i < shares.length; i++) sum += (weights[i] ?? NaN) * (shares[i] ?? NaN)
  return sum
}
