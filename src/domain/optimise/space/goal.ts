import { goalMeasure } from '../brief/brief'
import { type BlendSpace, negated } from './blend-space'

/** The measure that a brief's goal is about, and the way it should go. */
export interface MeasureGoal {
  readonly measure: string
  readonly sense: 'minimise' | 'maximise'
  /** What one percent of each oil adds to the figure that is made least. */
  readonly cost: Float64Array
}

/** The goal of a space as a cost to make least; undefined for a goal about shares. */
export function measureGoal(space: BlendSpace): MeasureGoal | undefined {
  const { goal } = space.brief
  const measure = goalMeasure(goal)
  if (measure === undefined) return undefined
  const perPercent = space.perPercent(measure)
  return 'minimise' in goal
    ? { measure, sense: 'minimise', cost: perPercent }
    : { measure, sense: 'maximise', cost: negated(perPercent) }
}
