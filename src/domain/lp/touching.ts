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
