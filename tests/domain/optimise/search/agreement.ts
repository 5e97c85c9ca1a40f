import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import type { SearchBudget } from '../../../../src/domain/optimise/search/allowance'
import type { Answer } from '../../../../src/domain/optimise/brief/answer'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { solveWithOwn } from '../../../../src/domain/lp/solvers/own'
import type { RuledReference } from './highs-briefs'
import { ruleFaults } from './rule-faults'

/** Of the goal; both searches run to the end, and hold rows to 1e-9 of their size. */
export const RELATIVE = 1e-6

/** Some seconds of searching, the same on every machine. */
export const AMPLE: SearchBudget = { timeMs: Infinity, nodes: 100_000 }

export function solved(brief: Brief, budget = AMPLE): Answer {
  return solveBrief(brief, library, solveWithOwn, budget)
}

export function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= RELATIVE * Math.max(1, Math.abs(a), Math.abs(b))
}

/** What a `closestTo` blend has of oils off the shelf, in percent; its program leaves that change out. */
export function offShelf({ goal, oils }: Brief): number {
  if (!('closestTo' in goal)) return 0
  const entries = Object.entries(goal.closestTo)
  const whole = entries.reduce((sum, [, share]) => sum + share, 0)
  return entries.reduce((sum, [oil, share]) => sum + (oil in oils ? 0 : (100 * share) / whole), 0)
}

/** What is wrong with an answer beside the truth that another solver tells. */
export function disagreement(brief: Brief, answer: Answer, truth: RuledReference): string[] {
  if (answer.status === 'invalid') return answer.problems.map(({ message }) => message)
  const wrong = 'blend' in answer ? ruleFaults(brief, answer.blend) : []
  if (truth.status === 'unfinished') return wrong
  if (answer.status === 'infeasible' || truth.status === 'infeasible') {
    const agrees = answer.status === truth.status || answer.status === 'undecided'
    return agrees ? wrong : [...wrong, `${answer.status}, not ${truth.status}`]
  }
  const best = truth.objective + offShelf(brief)
  const sign = 'maximise' in brief.goal ? -1 : 1
  const slack = RELATIVE * Math.max(1, Math.abs(best))
  if (answer.status === 'optimal') {
    if (!near(answer.goalValue, best)) wrong.push(`best ${answer.goalValue}, reference ${best}`)
    return wrong
  }
  if (!(sign * (best - answer.bound) >= -slack)) wrong.push(`${best} is beyond ${answer.bound}`)
  if (answer.status === 'feasible' && !(sign * (answer.goalValue - best) >= -slack))
    wrong.push(`${answer.goalValue} is better than the best, ${best}`)
  return wrong
}
