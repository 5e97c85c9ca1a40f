import type { Library } from '../../blend/library'
import type { Brief } from '../brief/brief'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import { bestBlend } from '../search/best-blend'
import { goalWithRoom } from '../search/best-linear'
import type { Found } from '../brief/answer'
import { solveBrief } from './solve'
import type { SearchBudget } from '../search/allowance'
import type { Gap } from '../brief/answer'
import { statesRules } from '../brief/brief-rules'
import { goalSlack } from '../space/found'

/** What a second solver says of an answer. Goals in the goal's unit. */
export type Confirmation =
  | { readonly status: 'confirmed'; readonly by: string }
  /** It found another goal value, or proved that there is no blend at all (null). */
  | {
      readonly status: 'differs'
      readonly by: string
      readonly ours: number
      readonly theirs: number | null
    }
  /**
   * Under rules: time did not suffice for one of the two to prove its best. Nothing that either found
   * contradicts the other; `theirs` is the best that the second one found, null for none yet.
   */
  | {
      readonly status: 'open'
      readonly by: string
      readonly ours: number
      readonly theirs: number | null
    }

/**
 * Solves a brief again with another solver and compares the goal, to one part in a million. Blends may
 * differ where several are equally good; the goal may only where limits all but touch, by what as much room
 * is worth. Under rules the second solver does every
 * linear program of a search of its own (`searchBy`), within the budget.
 */
export function confirm(
  brief: Brief,
  found: Found & Partial<Gap>,
  library: Library,
  solve: SolveProgram,
  by: string,
  budget?: SearchBudget,
): Confirmation {
  const ours = found.goalValue
  if (statesRules(brief)) return confirmUnderRules(brief, found, library, solve, by, budget)
  const theirs = bestBlend(brief, library, solve)?.goalValue
  if (theirs !== undefined) {
    if (isSame(ours, theirs)) return { status: 'confirmed', by }
    const eased = goalWithRoom(brief, library, solve) ?? theirs
    const roomIsWorth = Math.abs(eased - theirs)
    if (Math.abs(ours - theirs) <= goalSlack(ours) + roomIsWorth) return { status: 'confirmed', by }
  }
  return { status: 'differs', by, ours, theirs: theirs ?? null }
}

function confirmUnderRules(
  brief: Brief,
  found: Found & Partial<Gap>,
  library: Library,
  solve: SolveProgram,
  by: string,
  budget: SearchBudget | undefined,
): Confirmation {
  const ours = found.goalValue
  const answer = solveBrief(brief, library, solve, budget)
  if (answer.status === 'infeasible' || answer.status === 'invalid')
    return { status: 'differs', by, ours, theirs: null }
  const theirs = answer.status === 'undecided' ? null : answer.goalValue
  const told = { by, ours, theirs }
  const isBetter = 'maximise' in brief.goal ? above : below
  // Neither may better what the other has proved.
  const [ourBound, theirBound] = [found.bound ?? ours, 'bound' in answer ? answer.bound : theirs]
  const contradicts =
    (theirs !== null && isBetter(theirs, ourBound)) ||
    (theirBound !== null && isBetter(ours, theirBound))
  if (contradicts) return { status: 'differs', ...told }
  const isProved = answer.status === 'optimal' && found.bound === undefined
  return isProved ? { status: 'confirmed', by } : { status: 'open', ...told }
}

const isSame = (a: number, b: number) => Math.abs(a - b) <= goalSlack(a)
const below = (a: number, b: number) => a < b - goalSlack(b)
const above = (a: number, b: number) => a > b + goalSlack(b)
