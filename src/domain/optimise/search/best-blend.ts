import type { Library } from '../../blend/library'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import type { Found, Gap } from '../brief/answer'
import type { Brief } from '../brief/brief'
import { statesRules } from '../brief/brief-rules'
import { Allowance, type SearchBudget } from './allowance'
import { bestOfLimits } from './best-linear'
import { bestUnderRules } from './best-ruled'

/** Thrown where a blend was expected of a search that found none in time: for subordinate questions. */
export class UndecidedSearch extends Error {
  override readonly name = 'UndecidedSearch'
}

/**
 * The best blend for a sound brief, checked, or undefined where none exists. Under rules it is the best
 * found within the budget, with its gap where it is not proved the best; throws UndecidedSearch where
 * none was found in time.
 */
export function bestBlend(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  budget?: SearchBudget,
): (Found & Partial<Gap>) | undefined {
  if (!statesRules(brief)) return bestOfLimits(brief, library, solve)
  const best = bestUnderRules(brief, library, solve, new Allowance(budget).share())
  if (best.status === 'infeasible') return undefined
  if (best.status !== 'undecided') return best
  throw new UndecidedSearch(
    'No blend that keeps the rules was found in time, nor that there is none. Allow more time, or loosen a rule.',
  )
}
