import type { Library } from '../../blend/library'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { checkBrief } from '../brief/check-brief'
import { conflictOf } from '../infeasible/conflict-linear'
import { nearestFeasible } from '../infeasible/nearest'
import { Allowance, type SearchBudget } from '../search/allowance'
import { statesRules } from '../brief/brief-rules'
import { conflictUnderRules } from '../infeasible/conflict-ruled'
import type { Answer, NearestBrief, NoAnswer } from '../brief/answer'
import { solveWithOwn } from '../../lp/solvers/own'

/**
 * Answers a question about all blends that keep a brief. A question that comes back with nothing means
 * that there are none, and the answer then names the limits and rules that can't hold together. The
 * budget bounds the search for these under rules.
 */
export function askSpace<T>(
  brief: Brief,
  library: Library,
  question: (space: BlendSpace) => T | undefined,
  budget?: SearchBudget,
): T | NoAnswer {
  const problems = checkBrief(brief, library)
  if (problems.length > 0) return { status: 'invalid', problems }
  const answer = question(new BlendSpace(brief, library))
  if (answer !== undefined) return answer
  if (statesRules(brief)) {
    const allowance = new Allowance(budget)
    const clash = conflictUnderRules(brief, library, solveWithOwn, allowance)
    return { status: 'infeasible', ...clash }
  }
  return {
    status: 'infeasible',
    conflict: conflictOf(brief, library),
    nearest: nearestBrief(brief, library),
  }
}

/** An answer with the nearest brief that has a blend, where it says that there is none. */
export function withNearest(answer: Answer, brief: Brief, library: Library): Answer {
  if (answer.status !== 'infeasible') return answer
  return { ...answer, nearest: nearestBrief(brief, library) }
}

/** What would have to give way; undefined under rules, of which none is ever moved. */
function nearestBrief(brief: Brief, library: Library): NearestBrief | undefined {
  if (statesRules(brief)) return undefined
  const nearest = nearestFeasible(brief, library)
  return nearest.status === 'found' ? { changes: nearest.changes, blend: nearest.blend } : undefined
}
