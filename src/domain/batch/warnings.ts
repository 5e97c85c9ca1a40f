import { percentFromFraction } from '../units'
import { lotRemarks } from './check-lots'
import { processOf, saltPercentOfOils } from './cure'
import type { Additive } from './additions'
import { type AdditiveFact, factOf, type ScentFact } from './facts'
import { leastSafePercent } from './least-safe'
import type { BatchOrder } from './order'
import { EXACT, type Reckoning } from './reach'
import { roundedDown } from './rounding'
import type { Remark } from './remedy'
import { kindRemarks } from './soap-kind'
import type { SuperfatReport } from './superfat-report'
import { sum } from './weights'

/** Lye concentrations outside these are unusual for the process, percent: common practice. */
const USUAL_CONCENTRATION_PERCENT = { cold: { min: 25, max: 40 }, hot: { min: 25, max: 30 } }

/** Superfat above this makes lather fall and rancidity rise, percent; a salt bar wants it. Common practice. */
const MUCH_SUPERFAT_PERCENT = 8
const SALT_BAR_PERCENT = 25

/** A superfat is offered in steps of a tenth of a percent. */
const OFFER_STEP_PERCENT = 0.1

/**
 * All remarks on a batch that can be weighed out, with what would answer them. `concentrationPercent` is
 * the lye's, as asked.
 */
export function remarksOn(
  reckoning: Reckoning,
  superfat: SuperfatReport,
  concentrationPercent: number,
): Remark[] {
  return [
    ...concentrationRemarks(reckoning, concentrationPercent),
    ...leanRemarks(reckoning, superfat),
    ...cookRemarks(superfat),
    ...richRemarks(reckoning, superfat),
    ...lotRemarks(reckoning.order, reckoning.library).map((message) => ({ message })),
    ...acidRemarks(reckoning, superfat),
    ...doseRemarks(reckoning),
    ...kindRemarks(reckoning.order),
  ]
}

function concentrationRemarks({ order }: Reckoning, lye: number): Remark[] {
  const { min, max } = USUAL_CONCENTRATION_PERCENT[processOf(order)]
  const at = (lyeConcentration: number) =>
    'onlyFromLiquids' in order.water
      ? undefined
      : { says: `Lye at ${lyeConcentration} %`, change: { water: { lyeConcentration } } }
  if (lye > max)
    return [
      {
        message: `Lye at ${lye.toFixed(1)} % is stronger than the usual ${min} to ${max} %: it thickens fast and runs hot.`,
        remedy: at(max),
      },
    ]
  if (lye < min)
    return [
      {
        message: `Lye at ${lye.toFixed(1)} % is weaker than the usual ${min} to ${max} %: slow to thicken, soft when young, shrinks more.`,
        remedy: at(min),
      },
    ]
  return []
}

function leanRemarks(reckoning: Reckoning, superfat: SuperfatReport): Remark[] {
  const { order } = reckoning
  const { lotsPercent, reachPercent, leastSafePercent: safe } = superfat
  const confirmed =
    reachPercent.min < 0 && order.confirmedLean !== undefined
      ? [{ message: `Weighed out though lean, as the maker says: ${order.confirmedLean.trim()}` }]
      : []
  if (lotsPercent.min >= 0) return confirmed
  const least = leastSafePercent(reckoning, EXACT)
  const ask = least === null ? 'Use' : `Ask for at least ${least.toFixed(1)} % or use`
  return [
    {
      message: `The leanest lots of these oils could leave free lye (superfat ${lotsPercent.min.toFixed(1)} %). ${ask} the supplier's saponification values.`,
      remedy: safe === null ? undefined : askFor(safe),
    },
    ...confirmed,
  ]
}

/** Another lye discount, percent. */
function askFor(superfat: number) {
  return { says: `Ask for ${superfat.toFixed(1)} %`, change: { superfat } }
}

function cookRemarks({ inCook }: SuperfatReport): Remark[] {
  if (!inCook || inCook.reachPercent.min >= 0) return []
  return [
    {
      message: `The cook itself may end with free lye (superfat ${inCook.reachPercent.min.toFixed(1)} % in the leanest lots); it takes its part of the fat kept back. Test for free alkali before that fat goes in.`,
    },
  ]
}

function richRemarks(reckoning: Reckoning, superfat: SuperfatReport): Remark[] {
  const { typicalPercent, leastSafePercent: safe } = superfat
  const saltBar = saltPercentOfOils(reckoning) >= SALT_BAR_PERCENT
  if (typicalPercent <= MUCH_SUPERFAT_PERCENT || saltBar) return []
  const less = reckoning.order.superfat - (typicalPercent - MUCH_SUPERFAT_PERCENT)
  const offered = roundedDown(less, OFFER_STEP_PERCENT)
  return [
    {
      message: `A superfat of ${typicalPercent.toFixed(1)} % is over the usual ${MUCH_SUPERFAT_PERCENT} %: less lather, rancid sooner.`,
      remedy: safe !== null && offered >= safe ? askFor(offered) : undefined,
    },
  ]
}

function acidRemarks({ order }: Reckoning, { fromUnpaidAcidsPercent }: SuperfatReport): Remark[] {
  const remarks: Remark[] = []
  if (fromUnpaidAcidsPercent > 0)
    remarks.push({
      message: `Acids take hydroxide that is not weighed on top: ${fromUnpaidAcidsPercent.toFixed(1)} points of the superfat come of them.`,
      remedy: {
        says: 'Weigh it on top',
        change: { acids: (order.acids ?? []).map((one) => ({ ...one, alkali: 'add' as const })) },
      },
    })
  if ((order.acids ?? []).some(({ acid }) => acid === 'bicarbonate'))
    remarks.push({
      message: 'Bicarbonate turns hydroxide to carbonate, which no longer makes soap.',
    })
  return remarks
}

/** Additives and scents outside what workshops use. */
function doseRemarks(reckoning: Reckoning): Remark[] {
  const { order, weights, facts } = reckoning
  const additives = (order.additives ?? []).flatMap(({ additive }, index) =>
    overDose(factOf(facts.additives, additive), weights.additiveGrams[index] ?? 0, reckoning).map(
      ({ message, high }) => ({
        message,
        remedy: { says: `Take ${high} %`, change: { additives: dosed(order, index, high) } },
      }),
    ),
  )
  const scents = Object.entries(weights.fragranceGrams).flatMap(([id, grams]) => {
    const fact = facts.scents.get(id)
    return fact ? overDose(fact, grams, reckoning) : []
  })
  return [...additives, ...scents.map(({ message }) => ({ message }))]
}

function overDose(
  { name, usualPercentOfOils: { low, high } }: AdditiveFact | ScentFact,
  grams: number,
  { weights }: Reckoning,
): { message: string; high: number }[] {
  const percent = percentFromFraction(grams / sum(weights.oilGrams))
  if (percent <= high) return []
  const message = `${name}: ${percent.toFixed(1)} % of the oils is over the usual ${low} to ${high} %.`
  return [{ message, high }]
}

/** The additives with one of them at another share of the oils. */
function dosed({ additives = [] }: BatchOrder, index: number, percentOfOils: number): Additive[] {
  return additives.map((one, i) => (i === index ? { additive: one.additive, percentOfOils } : one))
}
