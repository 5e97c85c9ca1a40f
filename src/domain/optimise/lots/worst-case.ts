import { type AcidMeasure, measureOfOil } from '../../blend/measure'
import type { NaturalRange, Oil } from '../../blend/oil'
import { WHOLE_PERCENT } from '../../units'
import { lotValue, weightsOf } from './lot'
import { type LotRange, lotRangeOf } from './lot-range'

const known = new WeakMap<AcidMeasure, WeakMap<Oil, NaturalRange>>()

/**
 * The least and most that an acid measure can be in any lot of an oil, and its typical value between
 * them (`measureOfOil`), in points. Exact: both ends are values of lots. Reckoned once per measure and oil.
 *
 * What varies of one oil does not depend on the blend, and shares of a blend are never negative, so
 * a blend's worst case is the weight average of these (the box of A.L. Soyster, Operations Research
 * 21 (1973) 1154, made exact for acids that add to 100). Acids and unsaponifiables vary apart.
 */
export function worstOfOil(measure: AcidMeasure, oil: Oil): NaturalRange {
  const ofMeasure = known.get(measure) ?? new WeakMap<Oil, NaturalRange>()
  known.set(measure, ofMeasure)
  const found = ofMeasure.get(oil) ?? reckonWorst(measure, oil)
  ofMeasure.set(oil, found)
  return found
}

function reckonWorst(measure: AcidMeasure, oil: Oil): NaturalRange {
  const range = lotRangeOf(oil)
  const weights = weightsOf(measure, oil, range)
  const value = lotValue(measure, oil)
  const end = (side: 'low' | 'high') =>
    value({
      acids: extremeAcids(range, weights, side),
      unsaponifiableGPerKg: range.unsaponifiableGPerKg[side],
    })
  return { low: end('low'), typical: measureOfOil(measure, oil), high: end('high') }
}

/**
 * The acids of the lot with the least or most Σ weight × share, in g per 100 g.
 *
 * A fractional knapsack: every acid starts at its low, and what is missing to 100 goes to the acids
 * in order of weight, each up to its high. At most one acid ends between its two ends. Optimal by
 * exchange: moving mass from an earlier acid of that order to a later one never helps
 * (G.B. Dantzig, Operations Research 5 (1957) 266).
 */
export function extremeAcids(
  { low, high }: LotRange,
  weights: Float64Array,
  side: 'low' | 'high',
): Float64Array {
  const first = side === 'low' ? 1 : -1
  const weightOf = (index: number) => first * (weights[index] ?? NaN)
  const order = [...low.keys()].sort((a, b) => weightOf(a) - weightOf(b))
  const acids = Float64Array.from(low)
  let missing = WHOLE_PERCENT - low.reduce((sum, share) => sum + share, 0)
  for (const index of order) {
    const least = low[index] ?? NaN
    const taken = Math.min(missing, (high[index] ?? NaN) - least)
    acids[index] = least + taken
    missing -= taken
  }
  return acids
}
