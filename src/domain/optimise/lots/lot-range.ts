import type { NaturalRange, Oil } from '../../blend/oil'
import { WHOLE_PERCENT } from '../../units'

/**
 * Everything that a lot of an oil may be: all profiles with each acid between its low and its high
 * and the acids adding to 100, and, apart from them, any stated content of unsaponifiables. Arrays
 * have one entry per acid, in g per 100 g of fatty acids.
 */
export interface LotRange {
  /** Ids of the acids, in the order of the arrays. */
  readonly acids: readonly string[]
  readonly low: Float64Array
  /** The typical profile as parts of its own sum, so that it adds to 100 and is itself a lot. */
  readonly typical: Float64Array
  readonly high: Float64Array
  readonly unsaponifiableGPerKg: NaturalRange
}

const known = new WeakMap<Oil, LotRange>()

/**
 * The lots of an oil, from its figures in data/oils.json. Reckoned once per oil.
 *
 * The typical profile is always one of them: where, scaled to 100, it stands outside a range, that
 * range is widened to it. Else a blend could keep a limit for every lot and miss it at the very
 * values it is shown with; and ranges whose lows add to over 100, or highs to less, would leave no
 * lot at all, which says that the ranges are wrong and not that the oil can't exist. None of the
 * oils in data/ needs this.
 */
export function lotRangeOf(oil: Oil): LotRange {
  const found = known.get(oil) ?? readRange(oil)
  known.set(oil, found)
  return found
}

function readRange(oil: Oil): LotRange {
  const ranges = Object.values(oil.acids)
  const total = ranges.reduce((sum, { typical }) => sum + typical, 0)
  if (!(total > 0)) throw new Error(`Oil ${oil.id} has no fatty acids to vary`)
  const typical = Float64Array.from(ranges, (range) => (range.typical * WHOLE_PERCENT) / total)
  const typicalOf = (index: number) => typical[index] ?? NaN
  return {
    acids: Object.keys(oil.acids),
    low: Float64Array.from(ranges, ({ low }, i) => Math.min(low, typicalOf(i))),
    typical,
    high: Float64Array.from(ranges, ({ high }, i) => Math.max(high, typicalOf(i))),
    unsaponifiableGPerKg: unsaponifiableRange(oil),
  }
}

/**
 * Standards limit unsaponifiables from above only, and refining can take nearly all of them out, so
 * the low end is 0. A wax is the exception: its alcohols are half of every molecule and can't be
 * refined away, so its low end is its typical content.
 */
function unsaponifiableRange({ kind, unsaponifiableGPerKg }: Oil): NaturalRange {
  const { typical, high } = unsaponifiableGPerKg
  return { low: kind === 'wax-ester' ? typical : 0, typical, high }
}
