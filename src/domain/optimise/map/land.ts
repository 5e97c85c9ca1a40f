import type { Library } from '../../blend/library'
import { statesRules } from '../brief/brief-rules'
import { landOfLimits } from './land-linear'
import type { Land, LandQuestion } from './land-question'
import { landUnderRules } from './land-ruled'

/**
 * What a map shows of a sound brief: at once, or under rules from coarse to fine, yielded again after every
 * row. Throws UnsoundAnswer like every solve.
 */
export function* landOf(question: LandQuestion, library: Library): Generator<Land, void, void> {
  if (statesRules(question.brief)) yield* landUnderRules(question, library)
  else yield landOfLimits(question, library)
}
