import { type Blend, normalised, withoutTraces } from '../blend/blend'
import type { Problem } from '../blend/check-blend'
import type { Library } from '../blend/library'
import { blendValues } from '../blend/values'
import { type Brief, pricesOf } from './brief'
import { briefProgram } from './brief-program'
import { checkBrief } from './check-brief'
import type { SolveProgram } from './program'
import { conflictOf, type LimitChange } from './reasons'
import type { SearchBudget } from './rules/allowance'
import { answerUnderRules, bestOrUndecided } from './rules/answer'
import type { Gap } from './rules/best'
import { statesRules } from './rules/brief-rules'
import { breaches, CHECK_TOLERANCE, goalValue, shareOffShelf, UnsoundAnswer } from './verify'

/** A blend that meets the brief, with its measures. */
export interface Found {
  readonly blend: Blend
  /** Every measure by id; cost only where all oils of the blend are priced. */
  readonly measures: Readonly<Record<string, number>>
  /** The goal's measure, or the total change in percentage points. */
  readonly goalValue: number
}

/** The nearest brief that has a blend: which limits move where, and the blend that opens. */
export interface NearestBrief {
  readonly changes: readonly LimitChange[]
  readonly blend: Blend
}

/** What a brief comes to. Only an optimal or feasible answer carries a blend. */
export type Answer =
  | ({ readonly status: 'optimal' } & Found)
  /** Under rules, when time ran out: the best blend found, and how far it may be from the best there is. */
  | ({ readonly status: 'feasible' } & Found & Gap)
  /**
   * Under rules, when time ran out before any blend was found, which does not say that there is none.
   * If there is one its goal is no better than the bound, in the goal's unit.
   */
  | { readonly status: 'undecided'; readonly bound: number }
  | {
      readonly status: 'infeasible'
      readonly conflict: readonly string[]
      /** The least that would have to give way, where that was asked for. */
      readonly nearest?: NearestBrief | undefined
      /** True where time ran out before each member of the conflict was shown to be needed in it. */
      readonly mayBeSmaller?: true | undefined
    }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Shares below this are the solver's rounding, not an oil in the pot; percent of oil weight. */
const TRACE_PERCENT = 1e-7

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
  if (statesRules(brief)) return answerUnderRules(brief, library, solve, budget)
  const found = bestBlend(brief, library, solve)
  if (found) return { status: 'optimal', ...found }
  const conflict = conflictOf(brief, library)
  if (conflict.length === 0) throw new UnsoundAnswer('The solver finds no blend, and there is one')
  return { status: 'infeasible', conflict }
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
  if (statesRules(brief)) return bestOrUndecided(brief, library, solve, budget)
  const program = briefProgram(brief, library)
  const outcome = solve(program)
  if (outcome.status === 'infeasible') return undefined
  if (outcome.status === 'unbounded')
    throw new UnsoundAnswer('The solver calls a blend of limited shares unbounded')
  const shares = Object.keys(brief.oils).map((oil, index) => {
    return [oil, outcome.point[index] ?? NaN] as const
  })
  const raw: Blend = Object.fromEntries(shares)
  expectSound(brief, raw, library)
  const blend = normalised(withoutTraces(raw, TRACE_PERCENT))
  expectSound(brief, blend, library)
  const value = goalValue(brief, blend, library)
  expectSameGoal(value, outcome.objective + shareOffShelf(brief))
  return { blend, measures: blendValues(library, pricesOf(brief), blend), goalValue: value }
}

function expectSound(brief: Brief, blend: Blend, library: Library): void {
  const wrong = breaches(brief, blend, library)
  if (wrong.length > 0) throw new UnsoundAnswer(`The answer breaks the brief: ${wrong.join('; ')}`)
}

function expectSameGoal(ours: number, solvers: number): void {
  const scale = Math.max(1, Math.abs(ours))
  if (Math.abs(ours - solvers) <= CHECK_TOLERANCE * scale) return
  throw new UnsoundAnswer(`The solver claims a goal of ${solvers}; the blend comes to ${ours}`)
}
