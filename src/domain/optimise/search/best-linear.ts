import type { Library } from '../../blend/library'
import type { LinearProgram } from '../../lp/program'
import { solveWithOwn } from '../../lp/solvers/own'
import type { ProgramOutcome, SolveProgram } from '../../lp/solvers/solve-program'
import { withTouchingRows } from '../../lp/touching'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { Found } from '../brief/answer'
import type { Brief } from '../brief/brief'
import { briefProgram, goalSign } from '../space/brief-program'
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
  const value = goalSign(brief.goal) * outcome.objective + shareOffShelf(brief)
  return checkedFound(check, outcome.point, value)
}

/** The goal's value with twice the room that touching limits have, in its unit; undefined without a blend. */
export function goalWithRoom(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
): number | undefined {
  const outcome = solve(withTouchingRows(withTouchingRows(briefProgram(brief, library))))
  if (outcome.status !== 'optimal') return undefined
  return goalSign(brief.goal) * outcome.objective + shareOffShelf(brief)
}

/** What a program comes to; limits that touch clash for no solver, as they do not for our own. */
function outcomeOf(program: LinearProgram, solve: SolveProgram): ProgramOutcome {
  const outcome = solve(program)
  if (outcome.status !== 'infeasible' || solve === solveWithOwn) return outcome
  return solve(withTouchingRows(program))
}
