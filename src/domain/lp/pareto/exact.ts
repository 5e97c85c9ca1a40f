/*
 * Arithmetic without rounding, for signs that must not be wrong. Coordinates are put on a grid of a
 * power of two, so that they are integers in units of it; BigInt then takes sums and products exactly.
 */

/** Spacing of the grid: 4e-15, finer than the noise of any answer and far below any tolerance. */
export const GRID = 2 ** -48

/** The nearest coordinate on the grid, exactly. */
export function onGrid(coordinate: number): number {
  return Math.round(coordinate / GRID) * GRID
}

/** A coordinate on the grid in units of it. */
export function asInteger(coordinate: number): bigint {
  return BigInt(coordinate / GRID)
}

/** Σ a · b. */
export function exactDot(a: readonly bigint[], b: readonly bigint[]): bigint {
  let total = 0n
  a.forEach((one, k) => {
    total += one * (b[k] ?? 0n)
  })
  return total
}

/**
 * The vector orthogonal to n - 1 vectors of n entries whose length is their volume: the signed minors of
 * the matrix they form (the cross product where n is 3). All zero if they are dependent.
 */
export function orthogonalTo(rows: readonly (readonly bigint[])[]): bigint[] {
  const columns = Array.from({ length: rows.length + 1 }, (_, column) => column)
  const minors = minorsOf(rows, columns)
  const all = 2 ** columns.length - 1
  return columns.map((column) => {
    const minor = minors[all - 2 ** column] ?? 0n
    return column % 2 === 0 ? minor : -minor
  })
}

/**
 * Determinants of the first k rows and every set of k columns, for all k, by the set's number: bit c is
 * set for column c. Each is expanded along its last row in those of one row less (Laplace's rule).
 */
function minorsOf(rows: readonly (readonly bigint[])[], columns: readonly number[]): bigint[] {
  const minors = [1n]
  for (let set = 1; set < 2 ** columns.length; set++) {
    const chosen = columns.filter((column) => set & (1 << column))
    const row = rows[chosen.length - 1]
    let total = 0n
    chosen.forEach((column, k) => {
      const term = (row?.[column] ?? 0n) * (minors[set - 2 ** column] ?? 0n)
      total += (chosen.length - 1 + k) % 2 === 0 ? term : -term
    })
    minors.push(total)
  }
  return minors
}
