import { COST } from '../../blend/measure'
import { WHOLE_PERCENT } from '../../units'
import type { BlendSpace } from '../space/blend-space'
import { toleranceOn } from '../space/verify'
import type { MeasureGoal } from '../space/goal'
import type { LimitWorth } from '../sensitivity/limit-worths'
import type { OilPrices } from '../sensitivity/oil-prices'
import { costHeldUpSentence, oilInSentence, oilOutSentence } from './price-sentences'
import type { Words } from './words'
import { worthSentence } from './worth-sentences'

/** Everything that the sentences tell. */
export interface Told {
  readonly space: BlendSpace
  readonly goal: MeasureGoal
  /** The least cost that the goal comes to. */
  readonly objective: number
  readonly worths: readonly LimitWorth[]
  /** Undefined where no prices are told. */
  readonly prices: OilPrices | undefined
  readonly words: Words
}

const NO_LIMIT_COUNTS =
  'No limit costs anything: the goal is the best that any mix of the shelf can reach.'

const ONLY_TOGETHER =
  'No single limit costs anything: where one gives way, others hold the answer where it is.'

/** A sentence for each limit that decides the answer, then for each oil in the blend, then for the others. */
export function sentencesOf(told: Told): string[] {
  const { space, goal, worths, prices, words } = told
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
    ...(limits.length > 0 ? limits : [isBestOfShelf(told) ? NO_LIMIT_COUNTS : ONLY_TOGETHER]),
    ...oils,
    ...(heldUp ? [costHeldUpSentence(speech)] : []),
  ]
}

/** Without limits the best blend is one oil. */
function isBestOfShelf({ goal, objective }: Told): boolean {
  const best = Math.min(...goal.cost) * WHOLE_PERCENT
  return objective - best <= toleranceOn(goal.measure, best)
}
