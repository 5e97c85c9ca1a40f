import { AT_LOWER, BASIC, type Tableau } from './tableau'
import { SMALL_PIVOT } from './tolerances'

/**
 * Brings the tableau to the basis that `statuses` names (one byte per variable), by pivoting in
 * each variable that should be basic and is not, always on the largest entry among the rows whose
 * basic variable should leave. That is Gauss-Jordan elimination with partial pivoting. If the
 * basis is singular to working accuracy, the offending variable stays nonbasic and the variable it
 * should have replaced stays basic: still a basis, and the simplex method goes on from there.
 */
export function adoptBasis(t: Tableau, statuses: Uint8Array): void {
  const { columnCount: n, rowCount: m } = t.program
  for (let v = 0; v < n + m; v++) t.status[v] = statuses[v] ?? BASIC
  for (let j = 0; j < n; j++) {
    const v = t.columns[j]!
    if (t.status[v] !== BASIC) continue
    const row = largestReplaceable(t, j)
    if (row < 0) t.status[v] = AT_LOWER
    else t.pivot(row, j)
  }
  for (let i = 0; i < m; i++) t.status[t.heads[i]!] = BASIC
}

/** Computes the present basis afresh from the program's data, shedding all accumulated rounding. */
export function rebuild(t: Tableau): void {
  t.restart()
  adoptBasis(t, t.status)
  t.age = 0
}

/** Row with the largest entry in a column among basic variables that should be nonbasic, or -1. */
function largestReplaceable(t: Tableau, column: number): number {
  const { columnCount: n, rowCount: m } = t.program
  let best = -1
  let size = SMALL_PIVOT
  for (let i = 0; i < m; i++) {
    if (t.status[t.heads[i]!] === BASIC) continue
    const entry = Math.abs(t.entries[i * n + column]!)
    if (entry > size) {
      size = entry
      best = i
    }
  }
  return best
}
