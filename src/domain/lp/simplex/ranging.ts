import type { BoundOwner, Simplex } from './simplex'
import { AT_LOWER, AT_UPPER, AT_ZERO, BASIC } from './tableau'
import { PIVOT_ZERO } from './tolerances'

/** From `least` to `most`, both included; either may be infinite. */
export interface Interval {
  readonly least: number
  readonly most: number
}

/**
 * Costs of one variable for which the present vertex stays optimal, all else unchanged. For a
 * variable resting on its lower bound `least` is the cost at which it would be worth using more.
 *
 * Read off the final tableau: a nonbasic variable's own reduced cost, or for a basic one the
 * ratios along its row (V. Chvátal, Linear Programming (1983), chapter 10). When the vertex is
 * degenerate the interval holds for its present basis and may be wider in truth (B. Jansen, J.J.
 * de Jong, C. Roos, T. Terlaky, European J. Operational Research 101 (1997) 15-28).
 */
export function costRange(simplex: Simplex, variable: number): Interval {
  simplex.requireOptimal()
  const { tableau: t, program } = simplex
  const v = simplex.variableOf({ kind: 'variable', index: variable })
  const unit = program.costScale / program.scale[v]!
  const cost = program.cost[v]!
  if (t.status[v] === BASIC) {
    const { least, most } = basicCostChange(simplex, t.places[v]!)
    return { least: cost + unit * least, most: cost + unit * most }
  }
  const worth = cost - unit * t.reduced[t.places[v]!]!
  const fixed = program.low[v] === program.high[v]
  return {
    least: fixed || t.status[v] === AT_UPPER ? -Infinity : worth,
    most: fixed || t.status[v] === AT_LOWER ? Infinity : worth,
  }
}

/** Changes of a basic variable's scaled cost that keep every reduced cost of the right sign. */
function basicCostChange({ tableau: t, program }: Simplex, row: number): Interval {
  const n = t.columns.length
  let least = -Infinity
  let most = Infinity
  for (let j = 0; j < n; j++) {
    const v = t.columns[j]!
    const entry = t.entries[row * n + j]!
    if (Math.abs(entry) <= PIVOT_ZERO || program.low[v] === program.high[v]) continue
    // reduced[j] + change · entry keeps its sign: at least 0 on a lower bound, at most on an upper.
    const limit = -t.reduced[j]! / entry
    const rises = t.status[v] === AT_LOWER ? entry > 0 : entry < 0
    if (rises || t.status[v] === AT_ZERO) least = Math.max(least, Math.min(0, limit))
    if (!rises || t.status[v] === AT_ZERO) most = Math.min(most, Math.max(0, limit))
  }
  return { least, most }
}

/**
 * Values of one bound for which its present price holds, all else unchanged: while it stays within
 * them, moving the bound by one unit changes the objective by the row's dual or the variable's
 * reduced cost (0 if the bound is not rested on). Of an equality both bounds move together.
 */
export function boundRange(simplex: Simplex, owner: BoundOwner, side: 'lower' | 'upper'): Interval {
  simplex.requireOptimal()
  const { tableau: t, program } = simplex
  const v = simplex.variableOf(owner)
  const value = t.value[v]! * program.scale[v]!
  const equality = program.low[v] === program.high[v]
  const rests = t.status[v] === (side === 'lower' ? AT_LOWER : AT_UPPER)
  if (t.status[v] !== BASIC && (rests || equality)) {
    const { least, most } = nonbasicMove(simplex, t.places[v]!)
    const lowest = value + program.scale[v]! * least
    const highest = value + program.scale[v]! * most
    if (equality) return { least: lowest, most: highest }
    return side === 'lower'
      ? { least: lowest, most: Math.min(highest, program.upper[v]!) }
      : { least: Math.max(lowest, program.lower[v]!), most: highest }
  }
  return side === 'lower' ? { least: -Infinity, most: value } : { least: value, most: Infinity }
}

/** Moves of a nonbasic variable, in scaled units, that keep every basic one within its bounds. */
function nonbasicMove({ tableau: t, program }: Simplex, column: number): Interval {
  const n = t.columns.length
  let least = -Infinity
  let most = Infinity
  for (let i = 0; i < program.rowCount; i++) {
    const entry = t.entries[i * n + column]!
    if (Math.abs(entry) <= PIVOT_ZERO) continue
    const v = t.heads[i]!
    const down = Math.min(0, program.low[v]! - t.value[v]!) / entry
    const up = Math.max(0, program.high[v]! - t.value[v]!) / entry
    least = Math.max(least, Math.min(down, up))
    most = Math.min(most, Math.max(down, up))
  }
  return { least, most }
}
