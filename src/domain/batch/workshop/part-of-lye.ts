import { freeLyeLikely } from '../actual/free-lye-likely'
import type { ReadyPlan } from '../result/plan'
import { errorsOf, superfatAt } from '../superfat/reach'
import { type Superfats, superfatsOf } from '../superfat/superfats'
import { roundedDown, roundedToNearest, roundedUp } from '../weigh/rounding'
import { jugG, type Known, reckoningOf, type Standing, withPart } from './standing'

/**
 * What to do with a jug that holds too much hydroxide: pour a part of it, the rest is lye waste; and what
 * that comes to, with this weighed over.
 */
export interface PartOfLye extends Superfats {
  /** Lye to weigh into the pot, g. */
  readonly useG: number
  /** All the lye there is, g; steam that left it is put back as cold water first. */
  readonly ofG: number
  /** Plain water to put into the pot in place of what stays behind, g. */
  readonly waterG: number
  /** Lye that stays behind, g. */
  readonly wasteG: number
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
  const asAsked = (usedG: number) => superfatAt(reckoned(usedG), 'typical') >= asked
  const unlikely = (usedG: number) => !freeLyeLikely(plan, reckoned(usedG + errorG))
  if (asAsked(ofG) && unlikely(ofG)) return null
  const mostG = asAsked(ofG) ? ofG : most(asAsked, ofG)
  const useG = roundedToNearest(mostSteps(unlikely, stepsIn(mostG, step), step) * step, step)
  if (!(useG > 0)) return null
  return {
    useG,
    ofG,
    waterG: roundedUp(Math.max(0, jugG(plan, askedG) - useG), step),
    wasteG: ofG - useG,
    ...superfatsOf(reckoned(useG), reckoned(useG + errorG)),
  }
}

/** Whole steps of a scale up to a weight. */
function stepsIn(grams: number, stepG: number): number {
  return Math.round(roundedDown(grams, stepG) / stepG)
}

/**
 * The most steps of the scale, up to these, at which all is well. Whether it is takes 10,000 draws where it is
 * close, so each question halves what is left, and only steps that the scale shows are asked after.
 */
function mostSteps(good: (grams: number) => boolean, upTo: number, stepG: number): number {
  if (good(upTo * stepG)) return upTo
  let [low, high] = [0, upTo]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (good(middle * stepG)) low = middle
    else high = middle
  }
  return low
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
