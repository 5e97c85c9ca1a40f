import type { Library } from '../blend/library'
import type { Brief } from './brief'
import type { SolveProgram } from './program'
import { bestBlend, type Found } from './solve'
import { CHECK_TOLERANCE } from './verify'

/** What a second solver says of an answer. */
export type Confirmation =
  | { readonly status: 'confirmed'; readonly by: string }
  /** It found another goal value, in the goal's unit, or no blend at all (null). */
  | {
      readonly status: 'differs'
      readonly by: string
      readonly ours: number
      readonly theirs: number | null
    }

/**
 * Solves a brief again with another solver and compares the goal, to one part in a million. Blends may
 * differ where several are equally good; the goal may not.
 */
export function confirm(
  brief: Brief,
  found: Found,
  library: Library,
  solve: SolveProgram,
  by: string,
): Confirmation {
  const theirs = bestBlend(brief, library, solve)?.goalValue
  const ours = found.goalValue
  const scale = Math.max(1, Math.abs(ours))
  if (theirs !== undefined && Math.abs(ours - theirs) <= CHECK_TOLERANCE * scale)
    return { status: 'confirmed', by }
  return { status: 'differs', by, ours, theirs: theirs ?? null }
}
