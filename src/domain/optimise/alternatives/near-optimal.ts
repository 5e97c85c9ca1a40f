import type { BlendSpace } from '../space/blend-space'
import { nearMeasure } from './near-measure'
import { nearTarget } from './near-target'
import type { Slack } from './slack'

/**
 * The blends of a brief that are within a slack of its best: a polytope of which corners can be asked.
 * Shares are in percent, in the order of the space's oils.
 */
export interface NearOptimal {
  /** A best blend. Where several are equally good, always the same of them. */
  readonly best: Float64Array
  /** Its goal: a measure's value, or the total change in percentage points. */
  readonly bestValue: number
  /** The worst goal that is within the slack: over the best's for what is to be least, else under it. */
  readonly limit: number
  /** The corner with the least Σ cost × share; a fresh array. */
  corner(cost: Float64Array): Float64Array
  /** Ends the asking and puts back what was changed in the space. */
  close(): void
}

/** The blends within a slack of the best; undefined where no blend keeps the brief. */
export function nearOptimal(space: BlendSpace, slack: Slack): NearOptimal | undefined {
  const { goal } = space.brief
  return 'closestTo' in goal
    ? nearTarget(space, goal.closestTo, slack)
    : nearMeasure(space, goal, slack)
}
