/** One row of a table. */
export interface TablePoint {
  readonly x: number
  readonly y: number
}

/** Reads a table at x by straight lines between its rows, which rise in x; its ends hold beyond them. */
export function interpolated(table: readonly TablePoint[], x: number): number {
  const [first] = table
  if (!first) throw new Error('A table without rows has no values')
  const above = table.findIndex((point) => point.x >= x)
  if (above === 0) return first.y
  if (above < 0) return table.at(-1)?.y ?? first.y
  const [low, high] = [table[above - 1] ?? first, table[above] ?? first]
  return low.y + ((x - low.x) / (high.x - low.x)) * (high.y - low.y)
}
