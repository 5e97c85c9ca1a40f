import type { Library } from '../../blend/library'
import { BlendSpace } from '../blend-space'
import type { Brief } from '../brief'
import { briefProgram } from '../brief-program'
import type { SolveProgram } from '../program'
import type { Found } from '../solve'
import { solveWithOwn } from '../solvers/own'
import { shareOffShelf } from '../verify'
import type { GoOn } from './allowance'
import { blendRules } from './blend-rules'
import { checkedFound } from './checked'
import { goalQuestion } from './goal'
import { searchFor, type SearchOutcome } from './search'
import { searchBy } from './second-search'

/** How far a blend may be from the best there is, where time ran out before it was proved the best. */
export interface Gap {
  /** Proved: no blend's goal is better than this, in the goal's unit. */
  readonly bound: number
  /** Size of goal value less bound, in the goal's unit. */
  readonly gap: number
  /** The gap as a fraction of the goal value's size; of the bound's where that is larger. */
  readonly relativeGap: number
}

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
      ? searchFor(goalQuestion(new BlendSpace(brief, library)), goOn)
      : searchByAnother(brief, library, solve, goOn)
  if (outcome.status === 'infeasible' || outcome.status === 'undecided') return outcome
  const found = checkedFound(brief, library, outcome.shares, outcome.value)
  if (outcome.status === 'optimal') return { status: 'optimal', ...found }
  return { status: 'feasible', ...found, ...gapBetween(found.goalValue, outcome.bound) }
}

function searchByAnother(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  goOn: GoOn,
): SearchOutcome {
  const program = briefProgram(brief, library)
  const rules = blendRules(Object.keys(brief.oils), brief.rules)
  return searchBy(solve, program, rules, goOn, shareOffShelf(brief))
}

/** The gap between a goal's value and its bound, both in the goal's unit. */
export function gapBetween(value: number, bound: number): Gap {
  const gap = Math.abs(value - bound)
  const size = Math.max(Math.abs(value), Math.abs(bound))
  return { bound, gap, relativeGap: size > 0 ? gap / size : 0 }
}
