import { COST } from '../../blend/measure'
import type { BlendSpace } from '../blend-space'
import type { MeasureGoal } from './goal'
import type { LimitWorth } from './limit-worths'
import type { OilPrices } from './oil-prices'
import { costHeldUpSentence, oilInSentence, oilOutSentence } from './price-sentences'
import type { Words } from './words'
import { worthSentence } from './worth-sentences'

/** Everything that the sentences tell. */
export interface Told {
  readonly space: BlendSpace
  readonly goal: MeasureGoal
  readonly worths: readonly LimitWorth[]
  /** Undefined where no prices are told. */
  readonly prices: OilPrices | undefined
  readonly words: Words
}

const NO_LIMIT_COUNTS =
  'No limit costs anything: the goal is the best that any mix of the shelf can reach.'

/** A sentence for each limit that decides the answer, then for each oil in the blend, then for the others. */
export function sentencesOf({ space, goal, worths, prices, words }: Told): string[] {
  const speech = { brief: space.brief, library: space.library, words }
  const limits = worths.map((worth) => worthSentence(speech, goal, worth))
  const oils = prices
    ? [
        ...prices.oilsIn.map((one) => oilInSentence(speech, one)),
        ...prices.oilsOut.map((one) => oilOutSentence(speech, one)),
      ]
    : []
  const heldUp = goal.measure === COST && goal.sense === 'minimise' && !prices
  return [
    ...(limits.length > 0 ? limits : [NO_LIMIT_COUNTS]),
    ...oils,
    ...(heldUp ? [costHeldUpSentence(speech)] : []),
  ]
}
