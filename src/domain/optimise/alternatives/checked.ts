import type { Prices } from '../../blend/blend'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { Found } from '../brief/answer'
import { foundOf, goalSlack } from '../space/found'
import type { BriefCheck } from '../space/verify'
import { changeBetween } from './distinct'

/** A blend nearly as good as the best. */
export interface Alternative extends Found {
  /** How much worse its goal is than the best's, in the goal's unit; 0 or more. */
  readonly worseBy: number
  /** Total change from the best blend in percentage points. */
  readonly changeFromBest: number
}

/** The best blend, and how much worse others may be. */
export interface NearBest {
  readonly shares: Float64Array
  /** Its goal's value, and the amount by which another may be worse; in the goal's unit. */
  readonly value: number
  readonly slack: number
  /** Whether nothing is better; else a blend beside it may be. */
  readonly isProved: boolean
}

/**
 * Shares as an alternative, checked against the brief and the slack from the oils alone and not from
 * what was solved; throws UnsoundAnswer where they fail.
 */
export function checkedAlternative(
  check: BriefCheck,
  { shares: best, value, slack, isProved }: NearBest,
  shares: Float64Array,
  prices?: Prices,
): Alternative {
  const found = foundOf(check, shares, prices)
  const rise = found.goalValue - value
  const worseBy = 'maximise' in check.brief.goal ? -rise : rise
  const tolerance = goalSlack(value)
  const isBetter = isProved && worseBy < -tolerance
  if (isBetter || !(worseBy <= slack + tolerance))
    throw new UnsoundAnswer(`An alternative is worse by ${worseBy}; the slack is ${slack}`)
  return { ...found, worseBy: Math.max(0, worseBy), changeFromBest: changeBetween(shares, best) }
}
