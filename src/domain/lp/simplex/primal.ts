import { AT_LOWER, AT_UPPER, AT_ZERO, BASIC, type Tableau } from './tableau'
import { PATIENCE_PER_ROW, PIVOT_ZERO, PROGRESS, REBUILD_AFTER, SMALL_PIVOT } from './tolerances'

/** How a run of pivots ended. `stale` asks for a rebuild, `capped` used up its pivots. */
export type PrimalEnd = 'optimal' | 'unbounded' | 'stale' | 'capped'

/**
 * The bounded primal simplex: from a feasible basis, while some nonbasic variable improves
 * `objective` by leaving its bound, move it until a basic variable or its own other bound blocks.
 * With `face` given, only columns whose `face` entry is zero may move, so the search stays on the
 * optimal face of that other objective: this is how parametric passes break ties.
 *
 * Ends: by the same argument as the dual simplex, with Bland's rule after steps without progress.
 */
export function primalSimplex(
  t: Tableau,
  objective: Float64Array,
  face: Float64Array | null = null,
): PrimalEnd {
  const patience = PATIENCE_PER_ROW * (t.program.rowCount + 1)
  let stalled = t.cautious ? patience + 1 : 0
  for (;;) {
    const bland = stalled > patience
    const column = bland ? leastColumn(t, objective, face) : steepestColumn(t, objective, face)
    if (column < 0) return 'optimal'
    if (t.pivotsLeft-- <= 0) return 'capped'
    if (t.age >= REBUILD_AFTER) return 'stale'

    const way = objective[column]! < 0 ? 1 : -1
    const row = bland ? blandRow(t, column, way) : harrisRow(t, column, way)
    const own = ownRange(t, column)
    const step = row < 0 ? Infinity : Math.max(0, room(t, row, column, way))
    if (own === Infinity && step === Infinity) {
      t.rayColumn = column
      t.raySide = way
      return 'unbounded'
    }
    if (own <= step) t.flip(column)
    else {
      const pivot = Math.abs(t.entries[row * t.columns.length + column]!)
      if (pivot < SMALL_PIVOT && t.age > 0) return 'stale'
      enter(t, row, column, way, step)
    }
    if (Math.min(own, step) * Math.abs(objective[column]!) > PROGRESS)
      stalled = t.cautious ? stalled : 0
    else stalled++
  }
}

/** Whether a column may move and improves the objective by doing so. */
function attracts(
  t: Tableau,
  column: number,
  objective: Float64Array,
  face: Float64Array | null,
): boolean {
  const d = objective[column]!
  if (Math.abs(d) <= t.dualTolerance) return false
  const v = t.columns[column]!
  const status = t.status[v]!
  if (status === AT_LOWER ? d > 0 : status === AT_UPPER && d < 0) return false
  if (t.program.low[v] === t.program.high[v]) return false
  return face === null || Math.abs(face[column]!) <= t.dualTolerance
}

/**
 * Primal steepest edge: the best improvement per length of edge, norms read off the tableau. A norm
 * is at least 1, so most columns need none.
 */
function steepestColumn(t: Tableau, objective: Float64Array, face: Float64Array | null): number {
  const n = t.columns.length
  let best = -1
  let bestScore = 0
  for (let j = 0; j < n; j++) {
    const most = objective[j]! * objective[j]!
    if (most <= bestScore || !attracts(t, j, objective, face)) continue
    const score = most / edgeNorm(t, j)
    if (score > bestScore) {
      bestScore = score
      best = j
    }
  }
  return best
}

/** Squared length of the edge along which a column's variable moves by 1. */
function edgeNorm({ entries, columns, program }: Tableau, column: number): number {
  const n = columns.length
  const end = program.rowCount * n
  let norm = 1
  for (let k = column; k < end; k += n) norm += entries[k]! * entries[k]!
  return norm
}

/** Bland's entering column: the attractive variable with the least number. */
function leastColumn(t: Tableau, objective: Float64Array, face: Float64Array | null): number {
  let best = -1
  for (let j = 0; j < t.columns.length; j++) {
    if (!attracts(t, j, objective, face)) continue
    if (best < 0 || t.columns[j]! < t.columns[best]!) best = j
  }
  return best
}

/** How far the column's own variable can move before its other bound. */
function ownRange(t: Tableau, column: number): number {
  const v = t.columns[column]!
  return t.status[v] === AT_ZERO ? Infinity : t.program.high[v]! - t.program.low[v]!
}

/** Step at which a row's basic variable meets its bound; Infinity if it never does. */
function room(t: Tableau, row: number, column: number, way: number): number {
  const rate = way * t.entries[row * t.columns.length + column]!
  if (Math.abs(rate) <= PIVOT_ZERO) return Infinity
  const v = t.heads[row]!
  const bound = rate > 0 ? t.program.high[v]! : t.program.low[v]!
  return (bound - t.value[v]!) / rate
}

/**
 * Harris's ratio test: of all rows that block within the least step computed with bounds relaxed
 * by the tolerance, the one with the largest entry, for a stable pivot. -1 if nothing blocks.
 */
function harrisRow(t: Tableau, column: number, way: number): number {
  const n = t.columns.length
  const { rowCount: m, low, high, lowTolerated, highTolerated } = t.program
  let limit = Infinity
  for (let i = 0; i < m; i++) {
    const rate = way * t.entries[i * n + column]!
    if (Math.abs(rate) <= PIVOT_ZERO) continue
    const v = t.heads[i]!
    const relaxed = rate > 0 ? highTolerated[v]! : lowTolerated[v]!
    limit = Math.min(limit, (relaxed - t.value[v]!) / rate)
  }
  if (limit === Infinity) return -1
  let best = -1
  let size = 0
  for (let i = 0; i < m; i++) {
    const entry = way * t.entries[i * n + column]!
    if (Math.abs(entry) <= Math.max(size, PIVOT_ZERO)) continue
    const v = t.heads[i]!
    const bound = entry > 0 ? high[v]! : low[v]!
    if ((bound - t.value[v]!) / entry > limit) continue
    size = Math.abs(entry)
    best = i
  }
  return best
}

/** Bland's leaving row: the least step, exactly, and of equals the least number. */
function blandRow(t: Tableau, column: number, way: number): number {
  let best = -1
  let bestStep = Infinity
  for (let i = 0; i < t.program.rowCount; i++) {
    const step = Math.max(0, room(t, i, column, way))
    const tie = best >= 0 && step === bestStep && t.heads[i]! < t.heads[best]!
    if (step < bestStep || tie) {
      bestStep = step
      best = i
    }
  }
  return best
}

/** Moves the entering variable by `step` and exchanges it with the one that blocks. */
function enter(t: Tableau, row: number, column: number, way: number, step: number): void {
  const leaving = t.heads[row]!
  const entering = t.columns[column]!
  const rises = way * t.entries[row * t.columns.length + column]! > 0
  t.move(column, way * step)
  t.value[leaving] = rises ? t.program.high[leaving]! : t.program.low[leaving]!
  t.status[leaving] = rises ? AT_UPPER : AT_LOWER
  t.status[entering] = BASIC
  t.pivot(row, column)
}
