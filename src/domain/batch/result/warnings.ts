import { percentFromFraction } from '../../units'
import { weighedAcids } from '../weigh/acid-weights'
import { lotRemarks } from '../check/check-lots'
import { processOf, saltPercentOfOils } from '../react/cure'
import type { Additive } from '../order/additions'
import { type AdditiveFact, factOf, type ScentFact } from '../order/facts'
import { FREE_SHARE_LIMIT, type LikelySuperfat } from '../superfat/likely'
import type { BatchOrder } from '../order/order'
import type { Reckoning } from '../weigh/reckoning'
import type { Remark, WayOut } from '../order/remedy'
import { roundedDown } from '../weigh/rounding'
import { kindRemarks } from '../order/soap-kind'
import type { SuperfatReport } from '../superfat/superfat-report'
import { sum } from '../weigh/weights'
import { NOISE_PERCENT } from '../../noise'

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
    ...lotRemarks(reckoning.order, reckoning.library),
    ...waxRemarks(reckoning),
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
      : [{ says: `Lye at ${lyeConcentration} %`, change: { water: { lyeConcentration } } }]
  if (lye > max)
    return [
      {
        code: 'lye.strong',
        message: `Lye at ${lye.toFixed(1)} % is stronger than the usual ${min} to ${max} %: it thickens fast and runs hot.`,
        ways: at(max),
      },
    ]
  if (lye < min)
    return [
      {
        code: 'lye.weak',
        message: `Lye at ${lye.toFixed(1)} % is weaker than the usual ${min} to ${max} %: slow to thicken, soft when young, shrinks more.`,
        ways: at(min),
      },
    ]
  return []
}

/** What the guard says of the leanest lots: what was confirmed, and what is worst though not likely. */
function leanRemarks(reckoning: Reckoning, superfat: SuperfatReport): Remark[] {
  const { order } = reckoning
  const { reachPercent, likely } = superfat
  if (reachPercent.min >= -NOISE_PERCENT) return []
  if (order.confirmedLean !== undefined && likely.freeShare > FREE_SHARE_LIMIT)
    return [
      {
        code: 'lean.confirmed',
        message: `Weighed out though lean, as the maker says: ${order.confirmedLean.trim()}`,
      },
    ]
  if (likely.freeShare > FREE_SHARE_LIMIT) return []
  return [
    {
      code: 'lean.worst',
      message: `${worstOf(superfat)} leaves free lye: a superfat of ${reachPercent.min.toFixed(1)} %. Not likely: ${oneIn(likely)}. ${superfat.standsOnWords}`,
      ways: waysOut(reckoning, superfat),
    },
  ]
}

function worstOf({ scaleKnown }: SuperfatReport): string {
  return scaleKnown
    ? 'The leanest there can be, weighed as wrong as the scales allow,'
    : 'The leanest there can be'
}

/** "1 lot in 400", or "fewer than 1 lot in 1800" where no batch drawn holds free alkali. */
export function oneIn({ oneIn: n, anyFree }: LikelySuperfat): string {
  return anyFree ? `1 lot in ${n}` : `fewer than 1 lot in ${n}`
}

/** Steps of a finer scale for hydroxide, g: kitchens have the one, jewellers the other. */
const FINER_STEP_G = 0.1

/** The two cheapest ways out of a worst case below 0: a finer scale for the lye, a little more fat. */
function waysOut(reckoning: Reckoning, superfat: SuperfatReport): WayOut[] {
  const { scale } = reckoning.order
  const finer =
    scale && scale.lyeErrorG === undefined && scale.lyeStepG > FINER_STEP_G
      ? [
          {
            says: `Weigh the lye to ${FINER_STEP_G} g`,
            change: { scale: { ...scale, lyeStepG: FINER_STEP_G } },
          },
        ]
      : []
  const { leastSafePercent: safe } = superfat
  return [...finer, ...(safe === null ? [] : [askFor(safe)])]
}

/** Another lye discount, percent. */
function askFor(superfat: number) {
  return { says: `Ask for ${superfat.toFixed(1)} %`, change: { superfat } }
}

function cookRemarks({ inCook }: SuperfatReport): Remark[] {
  if (!inCook || inCook.reachPercent.min >= -NOISE_PERCENT) return []
  return [
    {
      code: 'lean.cook',
      message: `The cook itself may end with free lye (superfat ${inCook.reachPercent.min.toFixed(1)} % in the leanest lots, ${oneIn(inCook.likely)}); it takes its part of the fat kept back. Test for free alkali before that fat goes in.`,
    },
  ]
}

/** Waxes count for nothing at the lean end, and for little in the middle. */
function waxRemarks({ weights, library, order }: Reckoning): Remark[] {
  return Object.keys({ ...weights.oilGrams, ...weights.extraFatGrams }).flatMap((id) => {
    const oil = library.oils.get(id)
    if (!oil?.reacts) return []
    const { typical } = oil.reacts[order.process ?? 'cold']
    return [
      {
        code: `wax.${id}`,
        message: `${oil.name} is a wax that lye hardly reaches: hydroxide is weighed for ${percentFromFraction(typical).toFixed(0)} % of it (assumed), and the lean end counts it for nothing.`,
      },
    ]
  })
}

function richRemarks(reckoning: Reckoning, superfat: SuperfatReport): Remark[] {
  const { typicalPercent, likely } = superfat
  const safe = likely.leastSafePercent
  const saltBar = saltPercentOfOils(reckoning) >= SALT_BAR_PERCENT
  if (typicalPercent <= MUCH_SUPERFAT_PERCENT || saltBar) return []
  const less = reckoning.order.superfat - (typicalPercent - MUCH_SUPERFAT_PERCENT)
  const offered = roundedDown(less, OFFER_STEP_PERCENT)
  return [
    {
      code: 'rich',
      message: `A superfat of ${typicalPercent.toFixed(1)} % is over the usual ${MUCH_SUPERFAT_PERCENT} %: less lather, rancid sooner.`,
      ways: safe !== null && offered >= safe ? [askFor(offered)] : undefined,
    },
  ]
}

function acidRemarks(reckoning: Reckoning, { fromUnpaidAcidsPercent }: SuperfatReport): Remark[] {
  const { order } = reckoning
  const acids = order.acids ?? []
  const remarks: Remark[] = []
  if (fromUnpaidAcidsPercent > 0)
    remarks.push({
      code: 'acid.unpaid',
      message: `Acids take hydroxide that is not weighed on top: ${fromUnpaidAcidsPercent.toFixed(1)} points of the superfat come of them.`,
      ways: [
        {
          says: 'Weigh it on top',
          change: { acids: acids.map((one) => ({ ...one, alkali: 'add' as const })) },
        },
      ],
    })
  if (acids.some(({ acid }) => acid === 'bicarbonate'))
    remarks.push({
      code: 'acid.bicarbonate',
      message: 'Bicarbonate turns hydroxide to carbonate, which no longer makes soap.',
    })
  return [...remarks, ...formRemarks(reckoning), ...acidDoseRemarks(reckoning)]
}

/** Whether the bag holds the dry form or the hydrate is asked; until it is said, the weaker one counts. */
function formRemarks({ order, facts }: Reckoning): Remark[] {
  const acids = order.acids ?? []
  return acids.flatMap((use, index) => {
    const fact = factOf(facts.acids, use.acid)
    const weaker = facts.acids.get(fact.weakerForm ?? '')
    if (!weaker || use.formSure === true) return []
    const put = (acid: string): WayOut['change'] => ({
      acids: acids.map((one, i) => (i === index ? { ...one, acid, formSure: true } : one)),
    })
    return [
      {
        code: `acid.form.${index}`,
        message: `${fact.name}, or ${weaker.name}? The bag says. Until you have looked, the lean end counts it as the weaker one.`,
        ways: [
          { says: `It is ${fact.name.toLowerCase()}`, change: put(use.acid) },
          { says: `It is ${weaker.name.toLowerCase()}`, change: put(weaker.id) },
        ],
      },
    ]
  })
}

/** An acid above the share of oils that workshops use. */
function acidDoseRemarks({ order, weights, facts }: Reckoning): Remark[] {
  const oils = sum(weights.oilGrams)
  return weighedAcids(order, weights.acidGrams, facts).flatMap(({ pureG, fact }, index) => {
    const percent = percentFromFraction(pureG / oils)
    const { low, high } = fact.usualPercentOfOils
    if (percent <= high) return []
    return [
      {
        code: `acid.dose.${index}`,
        message: `${fact.name}: ${percent.toFixed(1)} % of the oils as pure acid is over the usual ${low} to ${high} %; its hydroxide is as much over.`,
      },
    ]
  })
}

/** Additives and scents outside what workshops use. */
function doseRemarks(reckoning: Reckoning): Remark[] {
  const { order, weights, facts } = reckoning
  const additives = (order.additives ?? []).flatMap(({ additive }, index): Remark[] =>
    overDose(factOf(facts.additives, additive), weights.additiveGrams[index] ?? 0, reckoning).map(
      ({ message, high }) => ({
        code: `dose.${index}`,
        message,
        ways: [{ says: `Take ${high} %`, change: { additives: dosed(order, index, high) } }],
      }),
    ),
  )
  const scents = Object.entries(weights.fragranceGrams).flatMap(([id, grams]): Remark[] => {
    const fact = facts.scents.get(id)
    return fact
      ? overDose(fact, grams, reckoning).map(({ message }) => ({ code: `scent.${id}`, message }))
      : []
  })
  return [...additives, ...scents]
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
