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
 * year; 0.2 means that two years in three it ends within about 20 % of where it began. From one or
 * more histories of the same thing (other packs, other suppliers), each in any order. Undefined for fewer
 * than two changes in all, which say nothing of a spread.
 *
 * Taken for a random walk of the logarithm without drift, whose variance grows with time: the sum of
 * squared log changes over the time they span (the maximum likelihood estimate; for evenly spaced
 * prices J. Hull, Options, Futures, and Other Derivatives, on estimating volatility; from memory).
 */
export function yearlyLogSpread(histories: readonly (readonly PricePoint[])[]): number | undefined {
  const changes = histories.flatMap(changesIn)
  if (changes.length < 2) return undefined
  const squares = changes.reduce((sum, { log }) => sum + log ** 2, 0)
  return Math.sqrt(squares / changes.reduce((sum, { years }) => sum + years, 0))
}

/** Log changes from each day to the next; of two prices on one day the first counts. */
function changesIn(history: readonly PricePoint[]) {
  const points = history.toSorted((a, b) => Date.parse(a.on) - Date.parse(b.on))
  return points.slice(1).flatMap(({ on, pricePerKg }, index) => {
    const before = points[index]
    const years = before ? (Date.parse(on) - Date.parse(before.on)) / MS_PER_YEAR : 0
    return before && years > 0 ? [{ years, log: Math.log(pricePerKg / before.pricePerKg) }] : []
  })
}
