/** A price on a day. */
export interface PricePoint {
  /** YYYY-MM-DD. */
  readonly on: string
  /** Money per kg, above 0. */
  readonly pricePerKg: number
}

const MS_PER_YEAR = 365.25 * 86_400_000

/**
 * How widely a price wanders in a year: the standard deviation of the logarithm of its change over one
 * year, from its history in any order; 0.2 means that two years in three it ends within about 20 % of
 * where it began. Undefined for fewer than three prices on different days, which say nothing of a spread.
 *
 * Taken for a random walk of the logarithm without drift, whose variance grows with time: the sum of
 * squared log changes over the time they span (the maximum likelihood estimate; J. Hull, Options, Futures, and Other
 * Derivatives, chapter on estimating volatility, for evenly spaced prices; from memory).
 */
export function yearlyLogSpread(history: readonly PricePoint[]): number | undefined {
  const points = history.toSorted((a, b) => Date.parse(a.on) - Date.parse(b.on))
  let [squares, years, steps] = [0, 0, 0]
  for (const [index, { on, pricePerKg }] of points.slice(1).entries()) {
    const before = points[index]
    if (!before) continue
    const span = (Date.parse(on) - Date.parse(before.on)) / MS_PER_YEAR
    if (!(span > 0)) continue
    squares += Math.log(pricePerKg / before.pricePerKg) ** 2
    years += span
    steps++
  }
  return steps < 2 ? undefined : Math.sqrt(squares / years)
}
