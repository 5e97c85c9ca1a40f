import { library } from '../../state/library'
import type { Measure } from '../../domain/blend/measure'
import type { Goal } from '../../domain/optimise/brief/brief'

/** A goal as the sentence offers it. */
export interface GoalOption {
  readonly value: string
  readonly label: string
  readonly goal: Goal
}

/** How the best of each measure is said; a measure without its own word says it plainly. */
const SUPERLATIVES: Readonly<Record<string, string>> = {
  cost: 'cheapest blend',
  hardness: 'hardest blend',
  lather: 'blend with the most lather',
  conditioning: 'most conditioning blend',
  mildness: 'mildest blend',
  wear: 'slowest-wearing blend',
  keeping: 'best-keeping blend',
}

/** The goals a maker can choose: the best of each measure, or nearness to a reference bar. */
export const GOAL_OPTIONS: readonly GoalOption[] = [
  ...[...library.measures]
    .filter(({ shown }) => shown)
    .sort((a, b) => Number(b.id === 'cost') - Number(a.id === 'cost'))
    .map(bestOf),
  ...library.referenceBars.map(({ id, name, blend }) => ({
    value: `near ${id}`,
    label: `blend nearest to ${name.charAt(0).toLowerCase()}${name.slice(1)}`,
    goal: { closestTo: blend },
  })),
]

function bestOf(measure: Measure): GoalOption {
  const { id, better } = measure
  const label = SUPERLATIVES[id] ?? `blend with the ${better === 'more' ? 'most' : 'least'} ${id}`
  const goal: Goal = better === 'more' ? { maximise: id } : { minimise: id }
  return { value: id, label, goal }
}

/** The option that stands for a goal; undefined for a goal that came from elsewhere. */
export function optionOf(goal: Goal): GoalOption | undefined {
  return GOAL_OPTIONS.find((option) => JSON.stringify(option.goal) === JSON.stringify(goal))
}
