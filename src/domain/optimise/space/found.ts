import { type Blend, normalised, withoutTraces } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { blendValues } from '../../blend/values'
import { type Brief, pricesOf } from '../brief/brief'
import type { Found } from '../brief/answer'
import { breaches, CHECK_TOLERANCE, goalValue } from './verify'
import { UnsoundAnswer } from '../../lp/unsound-answer'

/** Shares below this are the solver's rounding, not an oil in the pot; percent of oil weight. */
const TRACE_PERCENT = 1e-7

/**
 * Shares as a blend: without traces and adding to 100, or with steps put on the step each stands for.
 * Checked against limits and rules from the oils alone; throws UnsoundAnswer where it breaks any.
 */
export function checkedShares(brief: Brief, library: Library, shares: ArrayLike<number>): Blend {
  const step = brief.rules?.shareStep
  const onStep = (share: number) => (step === undefined ? share : Math.round(share / step) * step)
  const entries = Object.keys(brief.oils).map(
    (oil, place) => [oil, onStep(shares[place] ?? NaN)] as const,
  )
  const present = withoutTraces(Object.fromEntries(entries), TRACE_PERCENT)
  const blend = step === undefined ? normalised(present) : present
  const wrong = breaches(brief, blend, library)
  if (wrong.length > 0) throw new UnsoundAnswer(`A blend breaks the brief: ${wrong.join('; ')}`)
  return blend
}

/** Shares as a checked blend with its measures and its goal's value. */
export function foundOf(brief: Brief, library: Library, shares: ArrayLike<number>): Found {
  const blend = checkedShares(brief, library, shares)
  return {
    blend,
    measures: blendValues(library, pricesOf(brief), blend),
    goalValue: goalValue(brief, blend, library),
  }
}

/** The same for a blend whose goal's value was claimed; throws UnsoundAnswer where it is another. */
export function checkedFound(
  brief: Brief,
  library: Library,
  shares: ArrayLike<number>,
  claimed: number,
): Found {
  const found = foundOf(brief, library, shares)
  const slack = CHECK_TOLERANCE * Math.max(1, Math.abs(claimed))
  if (Math.abs(found.goalValue - claimed) <= slack) return found
  throw new UnsoundAnswer(
    `The search claims a goal of ${claimed}; the blend comes to ${found.goalValue}`,
  )
}
