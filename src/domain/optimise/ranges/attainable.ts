import { statesRules } from '../brief/brief-rules'
import type { SearchBudget } from '../search/allowance'
import { unlessNone, type Told } from '../search/told'
import type { BlendSpace } from '../space/blend-space'
import { type Attainable, attainableRanges } from './attainable-linear'
import { attainableUnderRules, type RuledAttainable } from './attainable-ruled'

/** The least and most of everything a brief lets vary; under rules each says what is proved of it. */
export type AttainableAnswer = ({ readonly status: 'optimal' } & Attainable) | Told<RuledAttainable>

/**
 * The true least and most of every measure and every oil's share, with all limits and rules kept;
 * undefined where there is no blend. The budget bounds the search under rules.
 */
export function attainable(space: BlendSpace, budget?: SearchBudget): AttainableAnswer | undefined {
  if (statesRules(space.brief)) return unlessNone(attainableUnderRules(space, budget))
  const ranges = attainableRanges(space)
  return ranges && { status: 'optimal', ...ranges }
}
