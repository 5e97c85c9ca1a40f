import { MOLAR_MASS_KOH } from '../../chemistry/atoms'
import { GRAMS_PER_KG } from '../../units'
import { needsOf } from '../actual/fixes'
import { bindsOf, type RangeEnd } from '../weigh/lots'
import type { ReadyPlan } from '../result/plan'
import { errorsOf } from '../superfat/reach'
import { type Superfats, superfatsOf } from '../superfat/superfats'
import type { Reckoning } from '../weigh/reckoning'
import { roundedUp } from '../weigh/rounding'
import { type Grams, sum } from '../weigh/weights'

/** More of every oil, in the shares they have, and what the batch comes to with it, each weighed short. */
export interface MoreOil extends Superfats {
  /** All together, g. */
  readonly grams: number
  /** Each, g, by oil. */
  readonly oilGrams: Grams
}

/** Step an addition is offered in where no scale is stated, g. */
const OFFER_STEP_G = 1

/** How much more is tried where the reckoned does not yet do, as a part of it; and how often. */
const MORE_PART = 1.02
const MOST_TRIES = 60

/**
 * How much more of all oils in their shares brings a batch with too much lye to the superfat asked, and
 * free lye out of what is likely. Both needs as in `oilFixes`, each oil rounded up and counted one error
 * of the scale short, as it stands on it once more. Null where there is nothing to mend or no oil.
 *
 * @param likely whether free lye is still likely in a batch, as `freeLyeLikely` says it
 */
export function moreOil(
  plan: ReadyPlan,
  reckoning: Reckoning,
  likely: (reckoning: Reckoning) => boolean,
): MoreOil | null {
  const { order } = plan
  const step = order.scale?.oilStepG ?? OFFER_STEP_G
  const total = sum(plan.oilGrams)
  const least = leastGrams(plan, reckoning)
  if (!(total > 0) || (least <= 0 && !likely(reckoning))) return null
  const errors = errorsOf(order)
  let wanted = Math.max(least, step)
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const oilGrams = shared(plan.oilGrams, wanted / total, step)
    const short = withOils(reckoning, oilGrams, errors.oilG)
    if (!likely(short))
      return {
        grams: sum(oilGrams),
        oilGrams,
        ...superfatsOf(withOils(reckoning, oilGrams, 0), short),
      }
    wanted *= MORE_PART
  }
  return null
}

/** What both needs come to, g of all oils together. */
function leastGrams(plan: ReadyPlan, reckoning: Reckoning): number {
  const { library, order } = reckoning
  const { typicalMol, leanMol } = needsOf(plan, reckoning)
  const total = sum(plan.oilGrams)
  const meanOf = (end: RangeEnd) =>
    Object.entries(plan.oilGrams).reduce(
      (mean, [oil, grams]) => mean + (grams / total) * bindsOf(oil, library, order)[end],
      0,
    )
  const gramsFor = (mol: number, value: number) =>
    (Math.max(0, mol) * MOLAR_MASS_KOH * GRAMS_PER_KG) / value
  return Math.max(gramsFor(typicalMol, meanOf('typical')), gramsFor(leanMol, meanOf('low')))
}

/** A part of every oil, rounded up to a step of the scale, g. */
function shared(oilGrams: Grams, part: number, stepG: number): Grams {
  return Object.fromEntries(
    Object.entries(oilGrams).map(([oil, grams]) => [oil, roundedUp(grams * part, stepG)]),
  )
}

/** The batch with so much more of its oils, each weighed so much short, g. */
function withOils(reckoning: Reckoning, more: Grams, shortG: number): Reckoning {
  const { weights } = reckoning
  const oils = Object.entries(more).map(
    ([oil, grams]) => [oil, (weights.oilGrams[oil] ?? 0) + grams - shortG] as const,
  )
  const oilGrams = { ...weights.oilGrams, ...Object.fromEntries(oils) }
  return { ...reckoning, weights: { ...weights, oilGrams } }
}
