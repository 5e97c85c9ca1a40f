/**
 * Fewest single-letter slips between two words: a letter left out, put in, changed, or swapped with its
 * neighbour (optimal string alignment). Stops at `most` + 1, which stands for anything farther.
 */
export function editDistance(from: string, to: string, most: number): number {
  const tooFar = most + 1
  if (Math.abs(from.length - to.length) > most) return tooFar
  const rows = [Array.from({ length: to.length + 1 }, (_, column) => column)]
  for (let row = 1; row <= from.length; row += 1) {
    const now = nextRow(from, to, row, rows)
    if (Math.min(...now) > most) return tooFar
    rows.push(now)
  }
  return Math.min(rows[from.length]?.[to.length] ?? tooFar, tooFar)
}

function nextRow(from: string, to: string, row: number, rows: readonly number[][]): number[] {
  const now = [row]
  const at = (back: number, column: number) => rows[row - back]?.[column] ?? Infinity
  for (let column = 1; column <= to.length; column += 1) {
    const same = from[row - 1] === to[column - 1]
    const swapped = from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]
    now.push(
      Math.min(
        at(1, column) + 1,
        (now[column - 1] ?? Infinity) + 1,
        at(1, column - 1) + (same ? 0 : 1),
        swapped ? at(2, column - 2) + 1 : Infinity,
      ),
    )
  }
  return now
}
