import { percentFromFraction } from '../units'
import type { Actuals } from './actual-weights'
import type { Ingredient } from './ingredients'
import type { ReadyPlan } from './plan'
import { jugWaterG } from './water-weights'

/** What a pot held when its cook began. Grams, without the pot. */
export interface CookedPot {
  /** All that was in it. */
  readonly filledG: number
  /** The water in that: the lye's and the cook's. */
  readonly waterG: number
  /** What was planned to boil off. */
  readonly cookWaterG: number
  /** How far the scale may be off; within it the pot is as planned. */
  readonly scaleErrorG: number
}

/** What the pot's weight after the cook says. Grams. */
export interface AfterCook {
  readonly boiledOffG: number
  readonly waterLeftG: number
  /** Of what is in the pot, percent. */
  readonly waterLeftPercent: number
  /** Water to stir in to come back to plan; 0 where none is missing. */
  readonly putBackG: number
  /** Water that was to boil off and is still in the pot; 0 where none is. */
  readonly overG: number
  readonly verdict: 'asPlanned' | 'drier' | 'wetter'
  readonly advice: readonly string[]
}

/** A pot weighed after its cook, or what is wrong with its weight. */
export type AfterCookAnswer =
  | { readonly status: 'reckoned'; readonly after: AfterCook }
  | { readonly status: 'invalid'; readonly message: string }

/** A scale without a stated step is taken to be right to so much, g. */
const USUAL_ERROR_G = 1

/** What goes in after the cook is not in the pot yet. */
const AFTER_COOK: readonly Ingredient['stage'][] = ['trace', 'afterCook']

/**
 * What the pot of a hot process holds when its cook begins, as planned or, where lines were weighed otherwise,
 * as they were. Water of solutions, acids and liquids counts as planned; plain water as weighed.
 */
export function potBeforeCook(plan: ReadyPlan, actual: Actuals = {}): CookedPot {
  const lines = plan.ingredients.filter(({ stage }) => !AFTER_COOK.includes(stage))
  const real = ({ key, grams }: Ingredient) => actual[key] ?? grams
  const plain = lines.filter(({ kind }) => kind === 'water' || kind === 'cookWater')
  const moreG = plain.reduce((g, line) => g + real(line) - line.grams, 0)
  const { scale } = plan.order
  return {
    filledG: lines.reduce((g, line) => g + real(line), 0),
    waterG: jugWaterG(plan.water) + moreG,
    cookWaterG: plan.water.cookG,
    scaleErrorG: scale?.oilErrorG ?? scale?.oilStepG ?? USUAL_ERROR_G,
  }
}

/**
 * What evaporated, from the weight of what is in the pot after the cook, g without the pot: boiled off = filled −
 * weight; water left = water − boiled off; to put back = boiled off − what was to boil off. Only water is taken
 * to leave the pot: what splashed or stuck to the stick counts as water, so it is reckoned dry rather than wet.
 * Invalid where the weight is none, is more than went in, or is less than can be by water alone.
 */
export function afterCook(pot: CookedPot, weightG: number): AfterCookAnswer {
  const { filledG, waterG, cookWaterG, scaleErrorG } = pot
  if (!(Number.isFinite(weightG) && weightG > 0))
    return wrong(`The weight after the cook is ${weightG} g. Weigh the pot and take its own off.`)
  const boiledOffG = filledG - weightG
  if (boiledOffG < -scaleErrorG)
    return wrong(
      `${weightG.toFixed(0)} g is more than the ${filledG.toFixed(0)} g that went in. Take the weight of the empty pot off, with stick and lid as before.`,
    )
  if (boiledOffG > waterG + scaleErrorG)
    return wrong(
      `${boiledOffG.toFixed(0)} g would have gone, and there were only ${waterG.toFixed(0)} g of water. Weigh again; if it is so, soap is missing.`,
    )
  return { status: 'reckoned', after: reckoned(pot, weightG, Math.max(0, boiledOffG), cookWaterG) }
}

function reckoned(
  { waterG, scaleErrorG }: CookedPot,
  weightG: number,
  boiledOffG: number,
  cookWaterG: number,
): AfterCook {
  const waterLeftG = Math.max(0, waterG - boiledOffG)
  const missingG = boiledOffG - cookWaterG
  const near = Math.abs(missingG) <= scaleErrorG
  const verdict = near ? 'asPlanned' : missingG > 0 ? 'drier' : 'wetter'
  const putBackG = verdict === 'drier' ? missingG : 0
  const overG = verdict === 'wetter' ? -missingG : 0
  const figures = {
    boiledOffG,
    waterLeftG,
    waterLeftPercent: percentFromFraction(waterLeftG / weightG),
    putBackG,
    overG,
    verdict,
  } as const
  return { ...figures, advice: adviceOn(figures) }
}

function adviceOn({
  boiledOffG,
  waterLeftG,
  waterLeftPercent,
  putBackG,
  overG,
  verdict,
}: Omit<AfterCook, 'advice'>): string[] {
  const gone = `${boiledOffG.toFixed(0)} g of water boiled off; ${waterLeftG.toFixed(0)} g are left, ${waterLeftPercent.toFixed(1)} % of the pot.`
  if (verdict === 'asPlanned') return [gone]
  if (verdict === 'drier')
    return [
      gone,
      `That is ${putBackG.toFixed(0)} g more than planned. Off the heat and below 85 °C, stir in ${putBackG.toFixed(0)} g of hot water by spoonfuls, or leave it: the bars are drier, stiffer to press and lose less in the cure.`,
    ]
  return [
    gone,
    `${overG.toFixed(0)} g more are in it than planned. Cook on, or leave it: the bars are softer, lose more in the cure and shrink more.`,
  ]
}

function wrong(message: string): AfterCookAnswer {
  return { status: 'invalid', message }
}
