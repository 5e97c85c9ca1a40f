import { freeLyeLikely } from '../actual/free-lye-likely'
import type { ReadyPlan } from '../result/plan'
import { errorsOf, superfatAt, superfatSpan } from '../superfat/reach'
import { roundedDown, roundedUp } from '../weigh/rounding'
import { jugG, type Known, reckoningOf, type Standing, withPart } from './standing'

/** What to do with a jug that holds too much hydroxide: pour a part of it, the rest is lye waste. */
export interface PartOfLye {
  /** Lye to weigh into the pot, g. */
  readonly useG: number
  /** All the lye there is, g; steam that left it is put back as cold water first. */
  readonly ofG: number
  /** Plain water to put into the pot in place of what stays behind, g. */
  readonly waterG: number
  /** Lye that stays behind, g. */
  readonly wasteG: number
  /** Superfat with it, typical and of the leanest lots with this weighed over, percent. */
  readonly superfatPercent: number
  readonly leanestPercent: number
}

/** Step that lye is weighed in where no scale is stated, g. */
const LYE_STEP_G = 1

/** Halvings of an interval from 0 to 1: finer than any scale. */
const HALVINGS = 40

/**
 * The most of the lye by which typical lots come to the superfat asked and free lye is not likely, with
 * this one weighing over by the scale's error; rounded down. Acids and all else in the jug stay behind in
 * the same part. Null where all of it can be used, or none.
 *
 * @param standing the batch with all of the lye in use
 */
export function partOfLye(plan: ReadyPlan, standing: Standing, known: Known): PartOfLye | null {
  const { asked: askedG, weighed } = standing
  const ofG = jugG(plan, weighed)
  if (!(ofG > 0)) return null
  const { scale } = plan.order
  const [step, errorG] = [scale?.oilStepG ?? LYE_STEP_G, errorsOf(plan.order).oilG]
  const reckoned = (usedG: number) =>
    reckoningOf(plan, withPart(plan, weighed, { usedG, ofG, waterG: 0 }), known)
  const asked = Math.min(plan.superfat.askedPercent, plan.superfat.typicalPercent)
  const good = (usedG: number) =>
    superfatAt(reckoned(usedG), 'typical') >= asked &&
    !freeLyeLikely(plan, reckoned(usedG + errorG))
  if (good(ofG)) return null
  const useG = roundedDown(most(good, ofG), step)
  if (!(useG > 0)) return null
  return {
    useG,
    ofG,
    waterG: roundedUp(Math.max(0, jugG(plan, askedG) - useG), step),
    wasteG: ofG - useG,
    superfatPercent: superfatAt(reckoned(useG), 'typical'),
    leanestPercent: superfatSpan(reckoned(useG + errorG), errorsOf(plan.order)).min,
  }
}

/** The largest weight up to this for which all holds that holds below it, g. */
function most(good: (grams: number) => boolean, upToG: number): number {
  let [low, high] = [0, upToG]
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2
    if (good(middle)) low = middle
    else high = middle
  }
  return low
}
