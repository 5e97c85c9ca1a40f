import { type Blend, normalised, type Prices, withoutTraces } from '../../blend/blend'
import { blendValues } from '../../blend/values'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { Found } from '../brief/answer'
import { type Brief, pricesOf } from '../brief/brief'
import { type BriefCheck, CHECK_TOLERANCE, goalValue } from './verify'

/** Shares below this are the solver's rounding, not an oil in the pot; percent of oil weight. */
const TRACE_PERCENT = 1e-7

/**
 * Shares in percent as the blend that is told: without traces and adding to 100, or where a step of shares
 * is given with each on the step it stands for.
 */
export function cleaned(shares: Blend, step?: number): Blend {
  if (step === undefined) return normalised(withoutTraces(shares, TRACE_PERCENT))
  const onSteps = Object.entries(shares).map(([oil, share]) => {
    return [oil, Math.round(share / step) * step] as const
  })
  return withoutTraces(Object.fromEntries(onSteps), TRACE_PERCENT)
}

/** Shares in percent, in the order of the brief's oils, as a blend with all of these. */
export function blendOfShares({ oils }: Brief, shares: ArrayLike<number>): Blend {
  return Object.fromEntries(Object.keys(oils).map((oil, place) => [oil, shares[place] ?? NaN]))
}

/**
 * A solver's shares in percent, in the order of the brief's oils, as the blend that is told. Checked
 * against limits and rules from the oils alone; throws UnsoundAnswer where it breaks any.
 */
export function checkedBlend(check: BriefCheck, shares: ArrayLike<number>): Blend {
  const { brief } = check
  const blend = cleaned(blendOfShares(brief, shares), brief.rules?.shareStep)
  check.expectKept(blend)
  return blend
}

/** The same with its measures and its goal's value. Prices in money per kg; the brief's if left out. */
export function foundOf(
  check: BriefCheck,
  shares: ArrayLike<number>,
  prices = pricesOf(check.brief),
): Found {
  const { brief, library } = check
  const blend = checkedBlend(check, shares)
  return {
    blend,
    measures: blendValues(library, prices, blend),
    goalValue: goalValue(brief, blend, library, prices),
  }
}

/** The same for shares whose goal's value was claimed; throws UnsoundAnswer where it is another. */
export function checkedFound(
  check: BriefCheck,
  shares: ArrayLike<number>,
  claimed: number,
  prices?: Prices,
): Found {
  const found = foundOf(check, shares, prices)
  expectSameGoal(found.goalValue, claimed)
  return found
}

/** Throws UnsoundAnswer where a goal's value is not the one that was claimed. */
export function expectSameGoal(value: number, claimed: number): void {
  if (Math.abs(value - claimed) <= goalSlack(claimed)) return
  throw new UnsoundAnswer(`The solver claims a goal of ${claimed}; the blend comes to ${value}`)
}

/** How far two values of a goal of about this size may differ and still be one, in the goal's unit. */
export function goalSlack(value: number): number {
  return CHECK_TOLERANCE * Math.max(1, Math.abs(value))
}
