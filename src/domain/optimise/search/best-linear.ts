import { type Blend, normalised, withoutTraces } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { blendValues } from '../../blend/values'
import type { SolveProgram } from '../../lp/solvers/program'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { Found } from '../brief/answer'
import { type Brief, pricesOf } from '../brief/brief'
import { briefProgram } from '../space/brief-program'
import { breaches, CHECK_TOLERANCE, goalValue, shareOffShelf } from '../space/verify'

/** Shares below this are the solver's rounding, not an oil in the pot; percent of oil weight. */
const TRACE_PERCENT = 1e-7

/**
 * The best blend for the limits of a sound brief, its rules not looked at; undefined where there is none.
 * Checked from the oils alone as the solver gave it and again without traces; throws UnsoundAnswer where
 * that check and the solver disagree.
 */
export function bestOfLimits(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
): Found | undefined {
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
