import { AT_LOWER, AT_UPPER, AT_ZERO, type Tableau } from './tableau'
import { PIVOT_ZERO } from './tolerances'

/*
 * Which nonbasic variable enters when a basic one leaves its row in the dual simplex. `side` is +1
 * for a variable below its range, which has to rise, and -1 for one above. A column can help when
 * moving its variable off the bound it rests on moves the leaving one the right way; its *ratio*
 * is the dual step at which its reduced cost reaches zero.
 */

/**
 * The bound-flipping (long-step) ratio test with Harris tolerances.
 *
 * As the dual step grows, reduced costs reach zero one after another. The first to do so need not
 * enter: if it is boxed it can jump to its other bound instead, which only takes its share
 * |push| · (high - low) off the leaving variable's infeasibility. While infeasibility remains the
 * step goes on, flipping for free what would have been pivots; blends are all boxes, so this pays.
 * Breakpoints closer together than the tolerance form a group, of which the largest |push| enters,
 * for a stable pivot (Koberstein 2005, section 6.2; Harris 1973). When no column is left while
 * infeasibility remains, the row is a proof of infeasibility: -1.
 */
export function longStep(t: Tableau, row: number, side: number): number {
  const { candidates, sizes } = t
  const { low, high, lowTolerated, highTolerated } = t.program
  const head = t.heads[row]!
  const slack = side > 0 ? low[head]! - lowTolerated[head]! : highTolerated[head]! - high[head]!
  const count = gatherBreakpoints(t, row, side)
  let left = side > 0 ? low[head]! - t.value[head]! : t.value[head]! - high[head]!
  let passed = 0
  while (passed < count) {
    const groupEnd = nextGroup(t, passed, count)
    let best = passed
    let taken = 0
    for (let k = passed; k < groupEnd; k++) {
      const v = t.columns[candidates[k]!]!
      taken += sizes[k]! * (high[v]! - low[v]!)
      if (sizes[k]! > sizes[best]!) best = k
    }
    if (left - taken <= slack) {
      for (let k = 0; k < passed; k++) t.flip(candidates[k]!)
      return candidates[best]!
    }
    left -= taken
    passed = groupEnd
  }
  return -1
}

/**
 * Least ratio of a row, in scaled units: for each unit its basic variable is forced up (side 1) or
 * down (-1) the optimum rises by at least this much. Infinity if nothing can move it.
 */
export function leastRatio(t: Tableau, row: number, side: number): number {
  const count = gatherBreakpoints(t, row, side)
  let least = Infinity
  for (let k = 0; k < count; k++) if (t.ratios[k]! < least) least = t.ratios[k]!
  return least
}

/**
 * Lists the columns that can move the leaving variable the way it must go, by moving off the bound
 * they rest on, with their ratios and the sizes of their entries; returns how many.
 */
function gatherBreakpoints(t: Tableau, row: number, side: number): number {
  const { columns, entries, status, reduced, candidates, ratios, sizes } = t
  const { low, high } = t.program
  const start = row * columns.length
  let count = 0
  for (let j = 0; j < columns.length; j++) {
    const push = side * entries[start + j]!
    const size = Math.abs(push)
    if (size <= PIVOT_ZERO) continue
    const v = columns[j]!
    const s = status[v]!
    if ((s === AT_LOWER && push < 0) || (s === AT_UPPER && push > 0) || low[v] === high[v]) continue
    candidates[count] = j
    const ratio = reduced[j]! / push
    ratios[count] = s === AT_ZERO || ratio < 0 ? 0 : ratio
    sizes[count] = size
    count++
  }
  return count
}

/**
 * Moves the next group of breakpoints to the front of the lists from `from` on and returns its
 * end: all whose ratio is within the least ratio computed with reduced costs relaxed by the
 * tolerance.
 */
function nextGroup(t: Tableau, from: number, count: number): number {
  const { candidates, ratios, sizes } = t
  let limit = Infinity
  for (let k = from; k < count; k++) {
    const relaxed = ratios[k]! + t.dualTolerance / sizes[k]!
    if (relaxed < limit) limit = relaxed
  }
  let end = from
  for (let k = from; k < count; k++) {
    const ratio = ratios[k]!
    if (ratio > limit) continue
    const size = sizes[k]!
    const column = candidates[k]!
    candidates[k] = candidates[end]!
    ratios[k] = ratios[end]!
    sizes[k] = sizes[end]!
    candidates[end] = column
    ratios[end] = ratio
    sizes[end++] = size
  }
  return end
}

/** Bland's entering column: the least ratio, exactly, and of equals the least number. */
export function blandColumn(t: Tableau, row: number, side: number): number {
  const { columns, candidates, ratios } = t
  const count = gatherBreakpoints(t, row, side)
  let best = 0
  for (let k = 1; k < count; k++) {
    const tie = ratios[k] === ratios[best]
    const lower = columns[candidates[k]!]! < columns[candidates[best]!]!
    if (ratios[k]! < ratios[best]! || (tie && lower)) best = k
  }
  return count === 0 ? -1 : candidates[best]!
}

/** Dual step at which a listed column's reduced cost reaches zero; wrong signs count as zero. */
export function dualRatio(t: Tableau, column: number, push: number): number {
  if (t.status[t.columns[column]!] === AT_ZERO) return 0
  return Math.max(0, t.reduced[column]! / push)
}
