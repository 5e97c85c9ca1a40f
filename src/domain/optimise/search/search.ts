import { solveWithRules } from '../../lp/search/branch'
import type { GoOn } from './allowance'
import { goalOf, type RuledQuestion } from './question'

/** What a search under rules came to; shares in percent, value and bound in the goal's unit. */
export type SearchOutcome =
  /** Proved the best, to 1e-9 of its value. */
  | { readonly status: 'optimal'; readonly shares: Float64Array; readonly value: number }
  /** Called off: the best so far. No blend is better than the bound. */
  | {
      readonly status: 'feasible'
      readonly shares: Float64Array
      readonly value: number
      readonly bound: number
    }
  /** Called off before any blend was found. If there is one it is no better than the bound. */
  | { readonly status: 'undecided'; readonly bound: number }
  /** Proved that no blend keeps limits and rules; one may where limits that touch are kept (`touching`). */
  | { readonly status: 'infeasible'; readonly mayTouch: boolean }

/**
 * Searches with the project's own branch and bound: on the oils themselves, every node a warm dual
 * simplex solve that proves its answer. `goOn` may call it off at any node.
 *
 * Chosen over four others, to which oils in use are 0-1 variables, on briefs of 40 oils of the library
 * with invented prices, five measure ranges up to 4 points wide and two groups: processor milliseconds,
 * median and longest of 40 each, every search to the end and one process per solver (of the last two one
 * per brief). All answers agreed to 1e-6.
 *
 *                       this        glpk.js 5   yalps 0.6.4    javascript-lp-solver 1.0.3  highs 1.15
 *     at most 5 oils    1.0 / 7     2.8 / 28    4.6 / 11       5.8 / 19                    35 / 880
 *     0 or 5 %          0.3 / 7     4.4 / 77    4.7 / 16       8.6 / 42                    26 / 1,390
 *     both              0.3 / 14    4.7 / 51    5.1 / 41       8.1 / 90                    28 / 1,520
 *     steps of 1 %      1.8 / 75    3.1 / 73    9.9 / 102      13 / 138                    77 / 1,840
 *     all three         1.1 / 24    6.8 / 230   83 / 12 never  29 / 12 never               74 / 1,430
 *
 * ("Never": no answer within 20 s.) The bench times 300 other programs of at most 5 of 40 oils in one
 * process, interleaved and on a machine that was not quiet (`tests/bench/results.md`, row "rules"): 0.3 ms
 * in the median and 10 at the 99th percentile here, 1.4 and 38 for glpk.js, 56 and about 1,050 for HiGHS.
 * javascript-lp-solver is not in that table, since a search of its can last minutes and not be stopped.
 *
 * Steps are the hard rule: of random briefs one in a hundred is not
 * settled in 20,000 programs, about a second, and of those with a range of no width one in three, since
 * hardly any blend in steps hits a value exactly.
 */
export function searchFor(question: RuledQuestion, goOn: GoOn, touching = false): SearchOutcome {
  const outcome = solveWithRules(question.program, question.rules, goOn, touching)
  if (outcome.status === 'infeasible') return { status: 'infeasible', mayTouch: outcome.mayTouch }
  const bound = goalOf(question, outcome.bound)
  if (outcome.best === null) return { status: 'undecided', bound }
  const shares = outcome.best.x.slice(0, question.shareCount)
  const value = goalOf(question, outcome.best.objective)
  if (outcome.status === 'optimal') return { status: 'optimal', shares, value }
  return { status: 'feasible', shares, value, bound }
}
