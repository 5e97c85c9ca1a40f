import { fractionFromPercent, percentFromFraction } from '../../units'
import { factOf } from '../order/facts'
import type { Outcome } from './balance'
import type { BatchOrder } from '../order/order'
import type { Reckoning } from '../weigh/reckoning'
import { sum } from '../weigh/weights'

/** A day of the cure and what is left of the weight poured, as fractions (0 to 1). */
export interface CurePoint {
  readonly day: number
  readonly left: number
  /** Of a bar that dries fast and far, and of one that dries slowly and little. */
  readonly lowLeft: number
  readonly highLeft: number
}

/** How a batch dries. */
export interface CurePlan {
  /** What leaves the pot or goes into the mould: all weighed, less what the cook boils off. g. */
  readonly freshG: number
  readonly boiledOffG: number
  /** All bars at the final moisture, g. */
  readonly curedG: number
  /** All bars as dry as they get on the shelf, g: what the weight on the label has to hold for. */
  readonly driestG: number
  readonly freshMoisturePercent: number
  readonly finalMoisturePercent: number
  /** Lost from pouring to the final moisture, percent of the weight poured. */
  readonly lossPercent: number
  readonly days: number
  readonly curve: readonly CurePoint[]
  /** Total fatty matter and glycerol of the cured bar, percent; predicted, not tested. */
  readonly fattyMatterPercent: number
  readonly glycerolPercent: number
}

/**
 * Water left in dry handmade bars, percent: common practice. They keep their glycerol, which holds some,
 * and settle at 8 to 14 %, not at 0.
 */
export const FINAL_MOISTURE_PERCENT = { driest: 8, usual: 12, wettest: 14 }

/**
 * Days in which half of the loss falls: common practice says half or more in the first 10 to 14 days.
 * Bars of about 25 mm, in moving air; the maker's own weekly weights go before it.
 */
const HALVED_IN_DAYS = { fast: 10, usual: 12, slow: 14 }

/** Days of cure, common practice at the careful end: 4 to 6 weeks cold, 1 to 2 hot, 4 to 8 a salt bar. */
const CURE_DAYS = { cold: 42, hot: 14, salt: 56, oliveOnly: 90 }

/** A bar with this much salt, or this much olive oil, percent of oils, cures as such. */
const SALT_BAR_PERCENT = 25
const OLIVE_ONLY_PERCENT = 90
const OLIVES: readonly string[] = ['olive', 'olive-pomace']

/** Days between the points of the curve. */
const CURVE_STEP_DAYS = 7

/**
 * How the bars dry: solids / (1 − f) at moisture f, fragrance apart, which holds no water; never more
 * than was poured.
 */
export function curePlan(reckoning: Reckoning, outcome: Outcome): CurePlan {
  const { order, weights } = reckoning
  const boiledOffG = weights.water.cookG
  const freshG = weights.totalGrams - boiledOffG
  const moisture = order.cure?.finalMoisturePercent ?? FINAL_MOISTURE_PERCENT.usual
  const at = (percent: number) => Math.min(freshG, gramsAtMoisture(outcome, percent))
  const curedG = at(moisture)
  const driestG = at(Math.min(moisture, FINAL_MOISTURE_PERCENT.driest))
  const days = order.cure?.days ?? usualDays(reckoning)
  const ends = { curedG, driestG, wettestG: at(Math.max(moisture, FINAL_MOISTURE_PERCENT.wettest)) }
  return {
    freshG,
    boiledOffG,
    curedG,
    driestG,
    freshMoisturePercent: percentFromFraction((outcome.balance.waterG - boiledOffG) / freshG),
    finalMoisturePercent: moisture,
    lossPercent: percentFromFraction(1 - curedG / freshG),
    days,
    curve: curveOf(freshG, ends, days),
    fattyMatterPercent: percentFromFraction(outcome.totalFattyMatterG / curedG),
    glycerolPercent: percentFromFraction(outcome.balance.glycerolG / curedG),
  }
}

/** All bars at a moisture in percent, g. */
export function gramsAtMoisture({ solidsG, balance }: Outcome, percent: number): number {
  const { fragranceG } = balance
  return (solidsG - fragranceG) / (1 - fractionFromPercent(percent)) + fragranceG
}

/** left(t) = dry + (1 − dry)·½^(t / t½), all parts of the weight poured. */
function curveOf(
  freshG: number,
  ends: { curedG: number; driestG: number; wettestG: number },
  days: number,
): CurePoint[] {
  const left = (dryG: number, day: number, halvedIn: number) =>
    dryG / freshG + (1 - dryG / freshG) * 0.5 ** (day / halvedIn)
  const count = Math.ceil(days / CURVE_STEP_DAYS)
  return Array.from({ length: count + 1 }, (_, week) => {
    const day = Math.min(days, week * CURVE_STEP_DAYS)
    return {
      day,
      left: left(ends.curedG, day, HALVED_IN_DAYS.usual),
      lowLeft: left(ends.driestG, day, HALVED_IN_DAYS.fast),
      highLeft: left(ends.wettestG, day, HALVED_IN_DAYS.slow),
    }
  })
}

function usualDays(reckoning: Reckoning): number {
  const { order, weights } = reckoning
  const oils = sum(weights.oilGrams)
  const olive = OLIVES.reduce((g, oil) => g + (weights.oilGrams[oil] ?? 0), 0)
  if (percentFromFraction(olive / oils) >= OLIVE_ONLY_PERCENT) return CURE_DAYS.oliveOnly
  if (saltPercentOfOils(reckoning) >= SALT_BAR_PERCENT) return CURE_DAYS.salt
  return CURE_DAYS[processOf(order)]
}

/** Salt in percent of the oils. */
export function saltPercentOfOils({ order, weights, facts }: Reckoning): number {
  const salt = (order.additives ?? []).reduce((g, { additive }, index) => {
    return factOf(facts.additives, additive).salt ? g + (weights.additiveGrams[index] ?? 0) : g
  }, 0)
  return percentFromFraction(salt / sum(weights.oilGrams))
}

/** Cold where the order does not say. */
export function processOf({ process }: BatchOrder): 'cold' | 'hot' {
  return process ?? 'cold'
}
