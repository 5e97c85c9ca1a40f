/** How long a task took over all its runs, in milliseconds. */
export interface Figures {
  readonly runs: number
  readonly median: number
  /** The largest, where there are fewer than a hundred runs. */
  readonly p99: number
}

export function figuresOf(times: readonly number[]): Figures {
  const sorted = times.toSorted((a, b) => a - b)
  return { runs: sorted.length, median: quantile(sorted, 0.5), p99: quantile(sorted, 0.99) }
}

/** The least value that so much of all values do not exceed. */
export function quantile(sorted: readonly number[], part: number): number {
  const place = Math.max(0, Math.ceil(part * sorted.length) - 1)
  return sorted[place] ?? NaN
}
