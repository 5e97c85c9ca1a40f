import { blandColumn, dualRatio, longStep } from './dual-ratio'
import { dot } from './kernel'
import { AT_LOWER, AT_UPPER, AT_ZERO, BASIC, type Tableau } from './tableau'
import {
  GOLDEN_RATIO,
  PATIENCE_PER_ROW,
  PERTURBATION,
  PERTURB_AFTER,
  PROGRESS,
  REBUILD_AFTER,
  SMALL_PIVOT,
} from './tolerances'

/** How a run of pivots ended. `stale` asks for a rebuild, `capped` used up its pivots. */
export type DualEnd = 'feasible' | 'infeasible' | 'stale' | 'capped'

/**
 * Makes the basis dual feasible, so that the dual simplex may start. A boxed variable moves to the
 * bound its reduced cost likes: that is all a blend ever needs. Where the liked bound is infinite
 * the cost is *shifted* so that the reduced cost is zero; the dual simplex then only finds some
 * feasible point (or proves there is none), and the primal simplex finishes with the true cost.
 * Shifting is the "cost modification" of Koberstein (2005), section 4.5.
 */
export function makeDualFeasible(t: Tableau): void {
  const { low, high } = t.program
  let flipped = false
  for (let j = 0; j < t.columns.length; j++) {
    const v = t.columns[j]!
    const d = t.reduced[j]!
    if (low[v] === high[v] || Math.abs(d) <= t.dualTolerance) continue
    const liked = d > 0 ? low[v]! : high[v]!
    if (liked === -Infinity || liked === Infinity) {
      t.reduced[j] = 0
      t.costsShifted = true
    } else if (t.status[v] !== (d > 0 ? AT_LOWER : AT_UPPER)) {
      t.status[v] = d > 0 ? AT_LOWER : AT_UPPER
      flipped = true
    }
  }
  if (flipped) t.refreshValues()
}

/**
 * The bounded dual simplex: while some basic variable is outside its range, drive it to the bound
 * it misses, letting in the nonbasic variable that keeps all reduced costs of the right sign.
 *
 * Ends. Each step with a positive dual step raises the dual objective, so no basis returns. After
 * a few steps without progress costs are perturbed, once; should the steps still stall, Bland's
 * rule (least index, exact ratios, no flips) chooses until there is progress. It cannot cycle
 * (R.G. Bland, Mathematics of Operations Research 2 (1977) 103-107), so in exact arithmetic the
 * loop ends. Rounding is outside that proof: the cap on pivots is for it.
 */
export function dualSimplex(t: Tableau): DualEnd {
  const patience = PATIENCE_PER_ROW * t.program.rowCount
  let stalled = t.cautious ? patience + 1 : 0
  let perturbed = false
  for (;;) {
    if (stalled === PERTURB_AFTER && !perturbed) {
      perturb(t)
      perturbed = true
    }
    const bland = stalled > patience
    const row = bland ? leastInfeasibleRow(t) : steepestRow(t)
    if (row < 0) return 'feasible'
    if (t.pivotsLeft-- <= 0) return 'capped'
    if (t.age >= REBUILD_AFTER) return 'stale'

    const v = t.heads[row]!
    const side = t.value[v]! < t.program.low[v]! ? 1 : -1
    const column = bland ? blandColumn(t, row, side) : longStep(t, row, side)
    if (column < 0) {
      t.rayRow = row
      t.raySide = side
      return 'infeasible'
    }
    const pivot = t.entries[row * t.columns.length + column]!
    if (Math.abs(pivot) < SMALL_PIVOT && t.age > 0) return 'stale'
    const step = dualRatio(t, column, side * pivot)
    if (step > PROGRESS) stalled = t.cautious ? stalled : 0
    else stalled++
    enter(t, row, column, side)
  }
}

/**
 * Moves every reduced cost a little further to its good side, each by a different amount, so that
 * dual steps are no longer zero and the long-step test has an order to go by. When the objective is
 * a multiple of a row that has reached its limit, all reduced costs are zero and this is what keeps
 * the search from wandering (measured: most pivots of 150 such programs fell from 138 to 38). The
 * amounts follow the golden ratio, not chance, so that the same program is solved the same way.
 */
function perturb(t: Tableau): void {
  for (let j = 0; j < t.columns.length; j++) {
    const v = t.columns[j]!
    if (t.status[v] === AT_ZERO) continue
    const amount = PERTURBATION * (1 + ((v * GOLDEN_RATIO) % 1))
    t.reduced[j]! += t.status[v] === AT_LOWER ? amount : -amount
  }
  t.costsShifted = true
}

/** Amount by which a basic variable is outside its range beyond the tolerance, else 0. */
function infeasibility(t: Tableau, v: number): number {
  const x = t.value[v]!
  if (x < t.program.lowTolerated[v]!) return t.program.low[v]! - x
  if (x > t.program.highTolerated[v]!) return x - t.program.high[v]!
  return 0
}

/**
 * Dual steepest edge: the row whose infeasibility is largest for the length of its edge, the norm
 * of the row (J.J. Forrest, D. Goldfarb, Mathematical Programming 57 (1992) 341-374). With the
 * whole tableau at hand the norm is read off exactly when wanted; few rows are ever infeasible.
 */
function steepestRow(t: Tableau): number {
  const n = t.columns.length
  let best = -1
  let bestScore = 0
  for (let i = 0; i < t.program.rowCount; i++) {
    const miss = infeasibility(t, t.heads[i]!)
    const most = miss * miss
    if (most <= bestScore) continue
    const score = most / (1 + dot(t.entries, i * n, t.entries, i * n, n))
    if (score > bestScore) {
      bestScore = score
      best = i
    }
  }
  return best
}

/** Bland's leaving row: the infeasible basic variable with the least number. */
function leastInfeasibleRow(t: Tableau): number {
  let best = -1
  for (let i = 0; i < t.program.rowCount; i++) {
    const v = t.heads[i]!
    if (infeasibility(t, v) > 0 && (best < 0 || v < t.heads[best]!)) best = i
  }
  return best
}

/** Moves the leaving variable onto the bound it missed and exchanges it with the entering one. */
function enter(t: Tableau, row: number, column: number, side: number): void {
  const leaving = t.heads[row]!
  const entering = t.columns[column]!
  const bound = side > 0 ? t.program.low[leaving]! : t.program.high[leaving]!
  const pivot = t.entries[row * t.columns.length + column]!
  if (dualRatio(t, column, side * pivot) === 0 && t.reduced[column] !== 0) {
    t.reduced[column] = 0 // of the wrong sign within the tolerance: shift it, or others would suffer
    t.costsShifted = true
  }
  t.move(column, (bound - t.value[leaving]!) / pivot)
  t.value[leaving] = bound
  t.status[leaving] = side > 0 ? AT_LOWER : AT_UPPER
  t.status[entering] = BASIC
  t.pivot(row, column)
}
