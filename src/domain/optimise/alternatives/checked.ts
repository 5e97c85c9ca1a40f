import { normalised, withoutTraces } from '../../blend/blend'
import { blendValues } from '../../blend/values'
import type { BlendSpace } from '../space/blend-space'
import type { Found } from '../brief/answer'
import { goalValue } from '../space/verify'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { changeBetween } from './distinct'
import type { NearOptimal } from './near-optimal'

/** A blend nearly as good as the best. */
export interface Alternative extends Found {
  /** How much worse its goal is than the best's, in the goal's unit; 0 or more. */
  readonly worseBy: number
  /** Total change from the best blend in percentage points. */
  readonly changeFromBest: number
}

/**
 * Shares below this are rounding, in percent. Far smaller than where a scale ends, so that leaving them
 * out can't move a goal by the tolerance it is held to.
 */
const TRACE_PERCENT = 1e-9

/** How far an alternative may pass the slack, relative to the best goal: the solver's own tolerance. */
const SLACK_TOLERANCE = 1e-9

/**
 * Shares as an alternative, checked against the brief and the slack from the oils alone and not from
 * what was solved; throws UnsoundAnswer where they fail.
 */
export function checkedAlternative(
  space: BlendSpace,
  near: NearOptimal,
  shares: Float64Array,
): Alternative {
  const { brief, library, prices } = space
  const blend = normalised(withoutTraces(space.blendOf(shares), TRACE_PERCENT))
  const value = goalValue(brief, blend, library, prices)
  expectSound(space.check.breaches(blend))
  const worseBy = 'maximise' in brief.goal ? near.bestValue - value : value - near.bestValue
  expectWithin(worseBy, Math.abs(near.limit - near.bestValue), near.bestValue)
  return {
    blend,
    measures: blendValues(library, prices, blend),
    goalValue: value,
    worseBy: Math.max(0, worseBy),
    changeFromBest: changeBetween(shares, near.best),
  }
}

function expectSound(wrong: readonly string[]): void {
  if (wrong.length > 0)
    throw new UnsoundAnswer(`An alternative breaks the brief: ${wrong.join('; ')}`)
}

function expectWithin(worseBy: number, slack: number, best: number): void {
  const tolerance = SLACK_TOLERANCE * Math.max(1, Math.abs(best))
  if (worseBy <= slack + tolerance && worseBy >= -tolerance) return
  throw new UnsoundAnswer(`An alternative is worse by ${worseBy}; the slack is ${slack}`)
}
