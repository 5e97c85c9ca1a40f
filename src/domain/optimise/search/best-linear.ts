import type { Library } from '../../blend/library'
import { solveWithOwn } from '../../lp/solvers/own'
import {
  type LinearProgram,
  type ProgramOutcome,
  type SolveProgram,
  withTouchingRows,
} from '../../lp/solvers/program'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { Found } from '../brief/answer'
import type { Brief } from '../brief/brief'
import { briefProgram } from '../space/brief-program'
import { blendOfShares, checkedFound } from '../space/found'
import { BriefCheck, shareOffShelf } from '../space/verify'

/**
 * The best blend for the limits of a sound brief, its rules not looked at; undefined where there is none.
 * Checked from the oils alone as the solver gave it and again without traces; throws UnsoundAnswer where
 * that check and the solver disagree.
 */
export function bestOfLimits(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
): Found | undefined {
  const outcome = outcomeOf(briefProgram(brief, library), solve)
  if (outcome.status === 'infeasible') return undefined
  if (outcome.status === 'unbounded')
    throw new UnsoundAnswer('The solver calls a blend of limited shares unbounded')
  const check = new BriefCheck(brief, library)
  check.expectKept(blendOfShares(brief, outcome.point))
  return checkedFound(check, outcome.point, outcome.objective + shareOffShelf(brief))
}

/** The goal's value with twice the room that touching limits have, in its unit; undefined without a blend. */
export function goalWithRoom(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
): number | undefined {
  const outcome = solve(withTouchingRows(withTouchingRows(briefProgram(brief, library))))
  return outcome.status === 'optimal' ? outcome.objective + shareOffShelf(brief) : undefined
}

/** What a program comes to; limits that touch clash for no solver, as they do not for our own. */
function outcomeOf(program: LinearProgram, solve: SolveProgram): ProgramOutcome {
  const outcome = solve(program)
  if (outcome.status !== 'infeasible' || solve === solveWithOwn) return outcome
  return solve(withTouchingRows(program))
}
