import type { LinearProgram } from './program'

/**
 * The one tolerance on limits. Limits that miss one another by no more than this part of their size, or of 1
 * if they are smaller, touch: a point that keeps them is given, and none is called impossible for less.
 *
 * Typed decimals touch by accident, at 1e-9 and below where a figure was copied with all its digits; bars of
 * soap are told apart at 1e-1. What is told of a blend is checked to 1e-6 (`optimise/space/verify.ts`): twice
 * this of 100 %, once for the sum of shares and once for the limit itself, stays within that. It is 1.9e-9 and
 * no round number, so that typed figures do not miss one another by exactly this.
 */
export const TOUCHING = 2 ** -29

/** How far a limit may be missed and still count as kept, in its own unit; infinite for no limit. */
export function touchOf(limit: number): number {
  return TOUCHING * Math.max(1, Math.abs(limit))
}

/** Whether the ends of a range leave it a value, be it by touching. */
export function leavesRoom(lower: number, upper: number): boolean {
  return lower <= upper || lower - upper <= touchOf(lower)
}

/**
 * The same program with room for limits that touch: rows are wider by it, and bounds of a variable that cross
 * by no more are one.
 */
export function withTouchingRows(program: LinearProgram): LinearProgram {
  const lower = Float64Array.from(program.lower)
  const upper = Float64Array.from(program.upper)
  lower.forEach((low, at) => {
    const high = upper[at] ?? NaN
    if (low > high && leavesRoom(low, high)) lower[at] = upper[at] = (low + high) / 2
  })
  const rows = program.rows.map((row) => ({
    ...row,
    lower: row.lower - touchOf(row.lower),
    upper: row.upper + touchOf(row.upper),
  }))
  return { ...program, lower, upper, rows }
}
