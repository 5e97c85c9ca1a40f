import type { Library } from '../../blend/library'
import type { Brief } from '../brief/brief'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import type { SearchBudget } from '../search/allowance'
import type { Answer } from '../brief/answer'
import { solveBrief } from './solve'

/** A brief asked both ways, and what the surer way costs. */
export interface RobustPrice {
  /** With wishes on measures held for typical lots. */
  readonly typical: Answer
  /** With the same wishes held for any lot. */
  readonly robust: Answer
  /**
   * How much worse the goal is for holding any lot, in the goal's unit (percentage points for
   * `closestTo`); 0 or more. Undefined where either way has no blend, or none proved the best.
   */
  readonly price: number | undefined
}

/**
 * The price of robustness (the name is that of D. Bertsimas, M. Sim, Operations Research 52 (2004) 35):
 * what keeping the wishes for any lot of the oils takes from the goal. The goal is told at typical
 * values both times, so the two can be compared. Two solves; the budget bounds each search under rules.
 */
export function robustPrice(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  budget?: SearchBudget,
): RobustPrice {
  const typical = solveBrief({ ...brief, robust: false }, library, solve, budget)
  const robust = solveBrief({ ...brief, robust: true }, library, solve, budget)
  if (typical.status !== 'optimal' || robust.status !== 'optimal')
    return { typical, robust, price: undefined }
  const rise = robust.goalValue - typical.goalValue
  return { typical, robust, price: Math.max(0, 'maximise' in brief.goal ? -rise : rise) }
}
