import type { BlendSpace } from '../space/blend-space'
import { closestQuestion } from './closest'
import { anyBlend, type RuledQuestion, towards } from './question'

/** The goal of a space's brief as a question; the rows of a robust brief's wishes are among its limits. */
export function goalQuestion(space: BlendSpace): RuledQuestion {
  const { goal } = space.brief
  if ('closestTo' in goal) return closestQuestion(space, goal.closestTo)
  return 'minimise' in goal
    ? towards(anyBlend(space), space.perPercent(goal.minimise), 'least')
    : towards(anyBlend(space), space.perPercent(goal.maximise), 'most')
}
