import type { Library } from '../blend/library'
import type { Brief } from './brief'
import { shareProgram } from './brief-program'
import { limitsOf, withLimit } from './limits'
import type { SolveProgram } from './program'

/**
 * Paths of limits that cannot hold together, for a brief that has no blend. The set is irreducible:
 * dropping any one of them lets the rest hold. Deletion filter (Chinneck & Dravnieks 1991, ORSA J.
 * Computing 3:157): each limit in turn is dropped, and stays dropped if there is still no blend; so
 * limits of oils go first and wishes on measures stay where either would do. One solve per limit.
 */
export function findConflict(brief: Brief, library: Library, solve: SolveProgram): string[] {
  let kept = brief
  for (const limit of limitsOf(brief)) {
    const without = withLimit(kept, limit, undefined)
    if (!isFeasible(without, library, solve)) kept = without
  }
  return limitsOf(kept).map(({ path }) => path)
}

/** Whether any blend meets all limits of a sound brief. */
export function isFeasible(brief: Brief, library: Library, solve: SolveProgram): boolean {
  return solve(shareProgram(brief, library)).status !== 'infeasible'
}
