import type { Library } from '../../blend/library'
import type { Brief } from '../brief'
import type { SolveProgram } from '../program'
import type { Answer, Found } from '../solve'
import { Allowance, type SearchBudget } from './allowance'
import { bestUnderRules, type Gap } from './best'
import { conflictUnderRules } from './conflict'

/**
 * Answers a sound brief with rules within a budget. Which limits and rules clash in an infeasible one
 * is found within another such budget.
 */
export function answerUnderRules(
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

/** Thrown where a blend was expected of a search that found none in time: for subordinate questions. */
export class UndecidedSearch extends Error {
  override readonly name = 'UndecidedSearch'
}

/** The best blend of a sound brief with rules; undefined where there is proved to be none. */
export function bestOrUndecided(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  budget?: SearchBudget,
): (Found & Partial<Gap>) | undefined {
  const best = bestUnderRules(brief, library, solve, new Allowance(budget).share())
  if (best.status === 'infeasible') return undefined
  if (best.status !== 'undecided') return best
  throw new UndecidedSearch(
    'No blend that keeps the rules was found in time, nor that there is none. Allow more time, or loosen a rule.',
  )
}
