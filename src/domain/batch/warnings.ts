import { percentFromFraction } from '../units'
import { lotRemarks } from './check-lots'
import { processOf, saltPercentOfOils } from './cure'
import { factOf } from './facts'
import { leastSafePercent } from './least-safe'
import { EXACT, type Reckoning } from './reach'
import type { SuperfatReport } from './superfat-report'
import { sum } from './weights'

/** Lye concentrations outside these are unusual for the process, percent: common practice. */
const USUAL_CONCENTRATION_PERCENT = { cold: { min: 25, max: 40 }, hot: { min: 25, max: 30 } }

/** Superfat above this makes lather fall and rancidity rise, percent; a salt bar wants it. Common practice. */
const MUCH_SUPERFAT_PERCENT = 8
const SALT_BAR_PERCENT = 25

/** All remarks on a batch that can be weighed out. `concentrationPercent` is the lye's, as asked. */
export function warningsOf(
  reckoning: Reckoning,
  superfat: SuperfatReport,
  concentrationPercent: number,
): string[] {
  return [
    ...concentrationRemarks(reckoning, concentrationPercent),
    ...leanRemarks(reckoning, superfat),
    ...cookRemarks(superfat),
    ...richRemarks(reckoning, superfat),
    ...lotRemarks(reckoning.order, reckoning.library),
    ...acidRemarks(reckoning, superfat),
    ...doseRemarks(reckoning),
  ]
}

function concentrationRemarks({ order }: Reckoning, lye: number): string[] {
  const { min, max } = USUAL_CONCENTRATION_PERCENT[processOf(order)]
  if (lye > max)
    return [
      `Lye at ${lye.toFixed(1)} % is stronger than the usual ${min} to ${max} %: it thickens fast and runs hot.`,
    ]
  if (lye < min)
    return [
      `Lye at ${lye.toFixed(1)} % is weaker than the usual ${min} to ${max} %: slow to thicken, soft when young, shrinks more.`,
    ]
  return []
}

function leanRemarks(
  reckoning: Reckoning,
  { lotsPercent, reachPercent }: SuperfatReport,
): string[] {
  const { order } = reckoning
  const confirmed =
    reachPercent.min < 0 && order.confirmedLean !== undefined
      ? [`Weighed out though lean, as the maker says: ${order.confirmedLean.trim()}`]
      : []
  if (lotsPercent.min >= 0) return confirmed
  const least = leastSafePercent(reckoning, EXACT)
  const ask = least === null ? 'Use' : `Ask for at least ${least.toFixed(1)} % or use`
  return [
    `The leanest lots of these oils could leave free lye (superfat ${lotsPercent.min.toFixed(1)} %). ${ask} the supplier's saponification values.`,
    ...confirmed,
  ]
}

function cookRemarks({ inCook }: SuperfatReport): string[] {
  if (!inCook || inCook.reachPercent.min >= 0) return []
  return [
    `The cook itself may end with free lye (superfat ${inCook.reachPercent.min.toFixed(1)} % in the leanest lots); it takes its part of the fat kept back. Test for free alkali before that fat goes in.`,
  ]
}

function richRemarks(reckoning: Reckoning, { typicalPercent }: SuperfatReport): string[] {
  const saltBar = saltPercentOfOils(reckoning) >= SALT_BAR_PERCENT
  if (typicalPercent <= MUCH_SUPERFAT_PERCENT || saltBar) return []
  return [
    `A superfat of ${typicalPercent.toFixed(1)} % is over the usual ${MUCH_SUPERFAT_PERCENT} %: less lather, rancid sooner.`,
  ]
}

function acidRemarks({ order }: Reckoning, { fromUnpaidAcidsPercent }: SuperfatReport): string[] {
  const remarks: string[] = []
  if (fromUnpaidAcidsPercent > 0)
    remarks.push(
      `Acids take hydroxide that is not weighed on top: ${fromUnpaidAcidsPercent.toFixed(1)} points of the superfat come of them.`,
    )
  if ((order.acids ?? []).some(({ acid }) => acid === 'bicarbonate'))
    remarks.push('Bicarbonate turns hydroxide to carbonate, which no longer makes soap.')
  return remarks
}

/** Additives and scents outside what workshops use. */
function doseRemarks({ order, weights, facts }: Reckoning): string[] {
  const oils = sum(weights.oilGrams)
  const doses = [
    ...(order.additives ?? []).map(({ additive }, i) => ({
      fact: factOf(facts.additives, additive),
      grams: weights.additiveGrams[i] ?? 0,
    })),
    ...Object.entries(weights.fragranceGrams).flatMap(([id, grams]) => {
      const fact = facts.scents.get(id)
      return fact ? [{ fact, grams }] : []
    }),
  ]
  return doses.flatMap(({ fact, grams }) => {
    const percent = percentFromFraction(grams / oils)
    const { low, high } = fact.usualPercentOfOils
    if (percent <= high) return []
    return [
      `${fact.name}: ${percent.toFixed(1)} % of the oils is over the usual ${low} to ${high} %.`,
    ]
  })
}
