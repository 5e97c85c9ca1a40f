import { statesRules } from '../brief/brief-rules'
import type { SearchBudget } from '../search/allowance'
import { type Told, unlessNone } from '../search/told'
import type { BlendSpace } from '../space/blend-space'
import { type Alternatives, type AlternativesOrder, alternativesTo } from './alternatives-linear'
import { alternativesUnderRules, type RuledAlternatives } from './alternatives-ruled'

/** Blends nearly as good as the best; under rules with what is proved of it. */
export type AlternativesAnswer = Told<Alternatives> | Told<RuledAlternatives>

/**
 * Blends within a slack of the best that keep all limits and rules and differ as much as possible from one
 * another; undefined where there is no blend. The budget bounds the search under rules.
 */
export function alternatives(
  space: BlendSpace,
  order: AlternativesOrder,
  budget?: SearchBudget,
): AlternativesAnswer | undefined {
  return statesRules(space.brief)
    ? unlessNone(alternativesUnderRules(space, order, budget))
    : unlessNone(alternativesTo(space, order))
}
