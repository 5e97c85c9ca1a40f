import type { ReadyPlan } from '../result/plan'
import { decimalsOf, roundedUp } from '../weigh/rounding'
import type { Actuals } from '../actual/actual-weights'

/** The pot on the scale after the cook. All g but `barWetG`'s, which is g a bar. */
export interface CookedPot {
  /** The soap in it. */
  readonly soapG: number
  /** Water that has gone; under 0 where the pot is heavier than before, which can't be. */
  readonly lostG: number
  /** Water put in to be boiled off. */
  readonly plannedLossG: number
  /** Plain water and that of acids and liquids before the cook, now, and as planned after it. */
  readonly putInG: number
  readonly waterLeftG: number
  readonly waterPlannedG: number
  /** To stir back in so that the bars weigh as planned; 0 where less went than planned. */
  readonly putBackG: number
  /** What the scale shows with it. */
  readonly thenReadsG: number
  /** A bar as cut where it is left as it is; null without a number of bars. */
  readonly barWetG: number | null
  readonly plannedBarWetG: number | null
  /** Whether the reading can't be right: heavier than before, or lighter than with all water gone. */
  readonly doubtful: boolean
}

/** Step of the scale where none is stated, g. */
const POT_STEP_G = 1

/** Grams that a pot may have gained without doubt, as steps of its scale. */
const STEPS_OF_DOUBT = 2

/**
 * What a pot weighed after the cook says. Water alone leaves it: lost = pot before + its own weight −
 * reading; and a bar's weight goes with what there is to cut.
 *
 * By hand: batter 7,679 g in a pot of 2,415 g, reading 9,812 g: 282 g have gone; with 200 g put in for it,
 * 82 g go back and the pot then reads 9,894 g.
 *
 * @param batterG what the pot held before the cook, g
 * @param water what was weighed, g by key, for the water put in
 */
export function cookedPot(
  plan: ReadyPlan,
  batterG: number,
  weighed: Actuals,
  { potG, readsG }: { readonly potG: number; readonly readsG: number },
): CookedPot {
  const step = plan.order.scale?.oilStepG ?? POT_STEP_G
  const lostG = clean(batterG + potG - readsG, step)
  const plannedLossG = weighed['cookWater'] ?? plan.water.cookG
  const plain = weighed['water'] ?? plan.water.plainG
  const { fromSolutionsG, fromAcidsG, fromLiquidsInLyeG } = plan.water
  const putInG = plain + plannedLossG + fromSolutionsG + fromAcidsG + fromLiquidsInLyeG
  const putBackG = lostG > plannedLossG ? roundedUp(lostG - plannedLossG, step) : 0
  const planned = plan.bars?.wetG ?? null
  const plannedG = batterG - plannedLossG
  return {
    soapG: readsG - potG,
    lostG,
    plannedLossG,
    putInG,
    waterLeftG: putInG - lostG,
    waterPlannedG: putInG - plannedLossG,
    putBackG,
    thenReadsG: readsG + putBackG,
    barWetG: planned === null ? null : (planned * (readsG - potG)) / plannedG,
    plannedBarWetG: planned,
    doubtful: lostG < -STEPS_OF_DOUBT * step || lostG > putInG,
  }
}

/** Free of floating-point noise, to the decimals of the scale's step. */
function clean(grams: number, stepG: number): number {
  return Number(grams.toFixed(decimalsOf(stepG) + 1))
}
