import type { Bounds } from '../program'
import type { BoundOwner, Simplex } from './simplex'
import { AT_LOWER, AT_UPPER, BASIC } from './tableau'
import { PIVOT_ZERO } from './tolerances'

/**
 * Values of one bound for which its present price holds, all else unchanged: while it stays within
 * them, moving the bound by one unit changes the objective by the row's dual or the variable's
 * reduced cost (0 if the bound is not rested on). Of an equality both bounds move together.
 */
export function boundRange(simplex: Simplex, owner: BoundOwner, side: 'lower' | 'upper'): Bounds {
  simplex.requireOptimal()
  const { tableau: t, program } = simplex
  const v = simplex.variableOf(owner)
  const value = t.value[v]! * program.scale[v]!
  const equality = program.low[v] === program.high[v]
  const rests = t.status[v] === (side === 'lower' ? AT_LOWER : AT_UPPER)
  if (t.status[v] !== BASIC && (rests || equality)) {
    const { lower: least, upper: most } = nonbasicMove(simplex, t.places[v]!)
    const lowest = value + program.scale[v]! * least
    const highest = value + program.scale[v]! * most
    if (equality) return { lower: lowest, upper: highest }
    return side === 'lower'
      ? { lower: lowest, upper: Math.min(highest, program.upper[v]!) }
      : { lower: Math.max(lowest, program.lower[v]!), upper: highest }
  }
  return side === 'lower' ? { lower: -Infinity, upper: value } : { lower: value, upper: Infinity }
}

/** Moves of a nonbasic variable, in scaled units, that keep every basic one within its bounds. */
function nonbasicMove({ tableau: t, program }: Simplex, column: number): Bounds {
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
  return { lower: least, upper: most }
}
