import type { Library } from '../../blend/library'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { briefProgram, goalSign } from '../space/brief-program'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import { withTouchingRows } from '../../lp/touching'
import { type Found, type Gap, gapBetween } from '../brief/answer'
import { solveWithOwn } from '../../lp/solvers/own'
import { BriefCheck, shareOffShelf } from '../space/verify'
import type { GoOn } from './allowance'
import { blendRules } from '../space/blend-rules'
import { checkedFound } from '../space/found'
import { goalQuestion } from './goal-question'
import type { RuledQuestion } from './question'
import { searchFor, type SearchOutcome } from './search'
import { searchBy } from './second-search'

/** The best blend under rules, as far as the search got. */
export type RuledBest =
  | ({ readonly status: 'optimal' } & Found)
  | ({ readonly status: 'feasible' } & Found & Gap)
  /** Time ran out before any blend was found; if there is one its goal is no better than the bound. */
  | { readonly status: 'undecided'; readonly bound: number }
  | { readonly status: 'infeasible' }

/**
 * The best blend for a sound brief with rules. With our own solver by its own search; any other one
 * solves the programs of a plain search, as a second opinion.
 */
export function bestUnderRules(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  goOn: GoOn,
): RuledBest {
  const outcome =
    solve === solveWithOwn
      ? searchByOwn(goalQuestion(new BlendSpace(brief, library)), goOn)
      : searchByAnother(brief, library, solve, goOn)
  if (outcome.status === 'infeasible') return { status: 'infeasible' }
  if (outcome.status === 'undecided') return outcome
  const found = checkedFound(new BriefCheck(brief, library), outcome.shares, outcome.value)
  if (outcome.status === 'optimal') return { status: 'optimal', ...found }
  return { status: 'feasible', ...found, ...gapBetween(found.goalValue, outcome.bound) }
}

/** The search in which limits that touch clash, or where that finds none, the one in which they do not. */
function searchByOwn(question: RuledQuestion, goOn: GoOn): SearchOutcome {
  const outcome = searchFor(question, goOn)
  const touches = outcome.status === 'infeasible' && outcome.mayTouch
  return touches ? searchFor(question, goOn, true) : outcome
}

function searchByAnother(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  goOn: GoOn,
): SearchOutcome {
  const question: RuledQuestion = {
    program: briefProgram(brief, library),
    rules: blendRules(Object.keys(brief.oils), brief.rules),
    shareCount: Object.keys(brief.oils).length,
    sign: goalSign(brief.goal),
    offset: shareOffShelf(brief),
  }
  const outcome = searchBy(solve, question, goOn)
  if (outcome.status !== 'infeasible') return outcome
  // Limits that touch clash for no solver, as they do not for our own.
  return searchBy(solve, { ...question, program: withTouchingRows(question.program) }, goOn)
}
