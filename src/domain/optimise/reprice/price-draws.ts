import type { Prices } from '../../blend/blend'
import { seededRandom } from '../../chance/random'

const MONTHS_PER_YEAR = 12

/** How prices may move together. */
export interface PriceMoves {
  /** By oil id: the standard deviation of the logarithm of a year's change; an oil left out stays. */
  readonly spreads: Readonly<Record<string, number>>
  /** How far ahead, in months; above 0. */
  readonly months: number
  /**
   * How alike all these prices move: the correlation of any two log changes, 0 (each for itself) to 1
   * (all up or down at once).
   */
  readonly correlation: number
  readonly count: number
  /** A whole number; the same seed draws the same prices. */
  readonly seed: number
}

/**
 * Draws prices after some months: every log change is normal with the middle at no change, so that today's
 * price is the median, and its spread grows with the root of time. Alike moves come from one common factor.
 * Money per kg as `prices` are; one record per draw, of the moved oils only, in the order of `spreads`.
 */
export function* drawPrices(prices: Prices, moves: PriceMoves): Generator<Prices, void, undefined> {
  const normal = normalFrom(seededRandom(moves.seed))
  const common = Math.sqrt(moves.correlation)
  const own = Math.sqrt(1 - moves.correlation)
  const time = Math.sqrt(moves.months / MONTHS_PER_YEAR)
  const oils = Object.entries(moves.spreads)
  for (let draw = 0; draw < moves.count; draw++) {
    const together = normal()
    yield Object.fromEntries(
      oils.map(([oil, spread]) => {
        const change = spread * time * (common * together + own * normal())
        return [oil, (prices[oil] ?? NaN) * Math.exp(change)]
      }),
    )
  }
}

/**
 * Standard normal numbers from even ones, two at a time (G. Box, M. Muller, Annals of Mathematical Statistics
 * 29 (1958) 610-611).
 */
function normalFrom(random: () => number): () => number {
  let kept: number | undefined
  return () => {
    if (kept !== undefined) {
      const value = kept
      kept = undefined
      return value
    }
    const radius = Math.sqrt(-2 * Math.log(1 - random()))
    const angle = 2 * Math.PI * random()
    kept = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
}
