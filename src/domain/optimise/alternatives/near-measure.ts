import { type BlendSpace, negated } from '../space/blend-space'
import type { Goal, Limits } from '../brief/brief'
import { heldForAnyLot } from '../lots/wishes'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { NearOptimal } from './near-optimal'
import { type Slack, slackAmount } from './slack'

type MeasureGoal = Exclude<Goal, { readonly closestTo: unknown }>

/**
 * Near-optimal blends for a measure to be least or most. The goal's measure has a row in the space
 * already, so holding it near its best is one more bound on that row, and corners come from the space's
 * own warm simplex. The first solve is cold, so that what was asked before does not tell in the answer.
 */
export function nearMeasure(
  space: BlendSpace,
  goal: MeasureGoal,
  slack: Slack,
): NearOptimal | undefined {
  const [measure, sign] = 'minimise' in goal ? [goal.minimise, 1] : [goal.maximise, -1]
  const worth = space.perPercent(measure)
  space.restoreAll()
  space.simplex.reset()
  const least = space.least(sign === 1 ? worth : negated(worth))
  if (!least) return undefined
  const [best, bestValue] = [least.x.slice(), sign * least.objective]
  const limit = bestValue + sign * slackAmount(slack, bestValue)
  boundRow(space, measure, sign === 1 ? { max: limit } : { min: limit })
  return {
    best,
    bestValue,
    limit,
    corner(cost) {
      const found = space.least(cost)
      if (!found) throw new UnsoundAnswer('Blends near the best were lost while looking at them')
      return found.x.slice()
    },
    close: () => space.restore(measure),
  }
}

/** Bounds a measure's typical value, beside what its wish asks of it. */
function boundRow(space: BlendSpace, measure: string, { min, max }: Limits): void {
  const { brief, simplex } = space
  const wish = heldForAnyLot(brief, measure) ? {} : (brief.measures[measure] ?? {})
  simplex.setRowBounds(
    space.rowOf(measure),
    Math.max(wish.min ?? -Infinity, min ?? -Infinity),
    Math.min(wish.max ?? Infinity, max ?? Infinity),
  )
}
