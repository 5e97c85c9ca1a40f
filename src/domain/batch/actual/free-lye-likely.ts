import { FREE_SHARE_LIMIT, likelySuperfat } from '../superfat/likely'
import type { ReadyPlan } from '../result/plan'
import { errorsOf, superfatAt, superfatSpan } from '../superfat/reach'
import type { Reckoning } from '../weigh/reckoning'
import { NOISE_PERCENT } from '../../noise'

/** A confirmed risk holds for lots no leaner than those confirmed; weighing may take this much off, points. */
const CONFIRMED_SLACK_POINTS = 0.5

/**
 * Whether a batch, weighed as the reckoning has it, is to be stopped because free lye is likely in it. The
 * one place that decides it for the work at the bench: the stop before lye meets oil, the stop after the
 * cook, and what a mend must come to.
 *
 * Typical lots with free lye always stop, and so does a batch of which more than one lot in 200 would hold
 * any; where the worst there can be leaves none, none of the draws would, and they are spared. Where the maker confirmed lots as lean as the plan's, they stop once they are leaner than that.
 */
export function freeLyeLikely(plan: ReadyPlan, reckoning: Reckoning): boolean {
  if (!(superfatAt(reckoning, 'typical') >= -NOISE_PERCENT)) return true
  const { min } = superfatSpan(reckoning, errorsOf(plan.order))
  if (plan.order.confirmedLean === undefined)
    return !(min >= 0 || likelySuperfat(reckoning).freeShare <= FREE_SHARE_LIMIT)
  return !(min >= Math.min(0, plan.superfat.reachPercent.min - CONFIRMED_SLACK_POINTS))
}
