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
export function cleaned(shares: Blend, step?: number, trace = TRACE_PERCENT): Blend {
  if (step === undefined) return normalised(withoutTraces(shares, trace))
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
 * against limits and rules from the oils alone; throws UnsoundAnswer where it breaks any. A trace stays
 * where a limit hangs on it, as one on cost may where an oil is a thousand million times as dear as another.
 */
export function checkedBlend(check: BriefCheck, shares: ArrayLike<number>): Blend {
  const { brief } = check
  const blend = cleaned(blendOfShares(brief, shares), brief.rules?.shareStep)
  return check.breaches(blend).length === 0 ? blend : checkedWithTraces(check, shares)
}

function checkedWithTraces(check: BriefCheck, shares: ArrayLike<number>): Blend {
  const { brief } = check
  const blend = cleaned(blendOfShares(brief, shares), brief.rules?.shareStep, 0)
  check.expectKept(blend)
  return blend
}

/** The same with its measures and its goal's value. Prices in money per kg; the brief's if left out. */
export function foundOf(
  check: BriefCheck,
  shares: ArrayLike<number>,
  prices = pricesOf(check.brief),
): Found {
  return withValues(check, checkedBlend(check, shares), prices)
}

function withValues({ brief, library }: BriefCheck, blend: Blend, prices: Prices): Found {
  return {
    blend,
    measures: blendValues(library, prices, blend),
    goalValue: goalValue(brief, blend, library, prices),
  }
}

/**
 * The same for shares whose goal's value was claimed; throws UnsoundAnswer where it is another. Traces stay
 * where it hangs on them.
 */
export function checkedFound(
  check: BriefCheck,
  shares: ArrayLike<number>,
  claimed: number,
  prices = pricesOf(check.brief),
): Found {
  const found = foundOf(check, shares, prices)
  if (isSameGoal(found.goalValue, claimed)) return found
  const exact = withValues(check, checkedWithTraces(check, shares), prices)
  expectSameGoal(exact.goalValue, claimed)
  return exact
}

/** Throws UnsoundAnswer where a goal's value is not the one that was claimed. */
export function expectSameGoal(value: number, claimed: number): void {
  if (isSameGoal(value, claimed)) return
  throw new UnsoundAnswer(`The solver claims a goal of ${claimed}; the blend comes to ${value}`)
}

function isSameGoal(value: number, claimed: number): boolean {
  return Math.abs(value - claimed) <= goalSlack(claimed)
}

/** How far two values of a goal of about this size may differ and still be one, in the goal's unit. */
export function goalSlack(value: number): number {
  return CHECK_TOLERANCE * Math.max(1, Math.abs(value))
}
