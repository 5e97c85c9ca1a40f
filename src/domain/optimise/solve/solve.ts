import type { Library } from '../../blend/library'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { Answer } from '../brief/answer'
import type { Brief } from '../brief/brief'
import { statesRules } from '../brief/brief-rules'
import { checkBrief } from '../brief/check-brief'
import { conflictOf } from '../infeasible/conflict-linear'
import { conflictUnderRules } from '../infeasible/conflict-ruled'
import { Allowance, type SearchBudget } from '../search/allowance'
import { bestOfLimits } from '../search/best-linear'
import { bestUnderRules } from '../search/best-ruled'

/**
 * Solves a brief; the budget bounds the search under rules and is not used without. The blend is checked
 * against the brief from the oils alone before it is returned, as the solver gave it and again without
 * traces; throws UnsoundAnswer where that check and the solver disagree.
 */
export function solveBrief(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  budget?: SearchBudget,
): Answer {
  const problems = checkBrief(brief, library)
  if (problems.length > 0) return { status: 'invalid', problems }
  return statesRules(brief)
    ? answerUnderRules(brief, library, solve, budget)
    : answerToLimits(brief, library, solve)
}

function answerToLimits(brief: Brief, library: Library, solve: SolveProgram): Answer {
  const found = bestOfLimits(brief, library, solve)
  if (found) return { status: 'optimal', ...found }
  const conflict = conflictOf(brief, library)
  if (conflict.length === 0) throw new UnsoundAnswer('The solver finds no blend, and there is one')
  return { status: 'infeasible', conflict }
}

/** Which limits and rules clash in an infeasible brief is found within another such budget. */
function answerUnderRules(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  budget?: SearchBudget,
): Answer {
  const best = bestUnderRules(brief, library, solve, new Allowance(budget).share())
  if (best.status !== 'infeasible') return best
  return {
    status: 'infeasible',
    ...conflictUnderRules(brief, library, solve, new Allowance(budget)),
  }
}
