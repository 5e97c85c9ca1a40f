import { problem, type Problem } from '../../blend/check-blend'
import type { Oil } from '../../blend/oil'
import { MOLAR_MASS_KOH, MOLAR_MASS_NAOH, MOLAR_MASS_WATER } from '../../chemistry/atoms'
import { molarMassOf } from '../../chemistry/formula'
import { MG_PER_GRAM, percentFromFraction, WHOLE_PERCENT } from '../../units'
import type { Reckoning } from '../weigh/reckoning'

/** What the last check finds, in mol; reckoned from what is weighed and from nothing else. */
export interface LastCheck {
  /** Hydroxide at its purest. */
  readonly alkaliMol: number
  /** What the fat of the leanest lots binds, waxes left out. */
  readonly fatMol: number
  /** What acids at their weakest take. */
  readonly acidMol: number
  /**
   * Hydroxide at its purest and weighed right, less what acids take, and what all fat would bind, were it the
   * fat of the library that takes most; fractions, free acids and oils of one's own count where they are weighed.
   */
  readonly toFatMol: number
  readonly mostFatMol: number
}

/**
 * A last look at the weights that trusts none of the code that made them: no balance, no span, no shared
 * step of the reckoning; only the weights, the library's figures and the molar masses. Where it disagrees
 * with `superfat.reachPercent`, one of the two is wrong and nothing is weighed out.
 */
export function lastCheck({ order, weights, library, facts }: Reckoning): LastCheck {
  const step = order.scale
  const oilSlip = step ? (step.oilErrorG ?? step.oilStepG) : 0
  const lyeSlip = step ? (step.lyeErrorG ?? step.lyeStepG) : 0
  const kohPerMol = MG_PER_GRAM * MOLAR_MASS_KOH
  const weighed = new Set(Object.keys({ ...weights.oilGrams, ...weights.extraFatGrams }))
  const most = Math.max(
    ...[...library.oils.values()]
      .filter((oil) => weighed.has(oil.id) || isFatAsGrown(oil))
      .map((oil) => oil.saponificationValue.high),
  )
  let [fatMol, mostFatMol, alkaliMol, acidMol, toFatMol] = [0, 0, 0, 0, 0]
  for (const grams of [weights.oilGrams, weights.extraFatGrams])
    for (const [id, g] of Object.entries(grams)) {
      const oil = library.oils.get(id)
      if (!oil) continue
      const lot = order.lots?.[id]
      const value = lot?.saponificationValue
      const low =
        value === undefined
          ? oil.saponificationValue.low
          : value - Math.max(lot?.tolerance ?? value / WHOLE_PERCENT, value / (2 * WHOLE_PERCENT))
      if (oil.kind !== 'wax-ester') fatMol += (Math.max(0, g - oilSlip) * low) / kohPerMol
      mostFatMol += (g * Math.max(most, value ?? 0)) / kohPerMol
    }
  for (const [kind, molarMass] of [
    ['naoh', MOLAR_MASS_NAOH],
    ['koh', MOLAR_MASS_KOH],
  ] as const) {
    const g = weights.alkaliGrams[kind] ?? 0
    if (g <= 0) continue
    const perGram = purestPercent(order, kind) / WHOLE_PERCENT / molarMass
    alkaliMol += (g + lyeSlip) * perGram
    toFatMol += g * perGram
  }
  ;(order.acids ?? []).forEach((use, index) => {
    const fact = facts.acids.get(use.acid)
    if (!fact) return
    const pure = use.strengthPercent ?? WHOLE_PERCENT
    const least = Math.min(use.strengthFromPercent ?? pure, pure)
    const weak = use.certificate !== undefined && use.strengthFromPercent !== undefined
    const held = weak ? least : Math.min(least, pure * fact.leastPart)
    const g = weights.acidGrams[index] ?? 0
    const other = use.formSure ? undefined : facts.acids.get(fact.weakerForm ?? '')
    const form = other ?? fact
    const molarMass = molarMassOf(form.formula) + form.crystalWaters * MOLAR_MASS_WATER
    const perGram = (form.acidGroups * held) / WHOLE_PERCENT / molarMass
    acidMol += Math.max(0, g - lyeSlip) * perGram
    toFatMol -= g * perGram
  })
  return { alkaliMol, fatMol, acidMol, toFatMol, mostFatMol }
}

/** Not split and not parted: nobody makes a bar of such by mistake, and they take more alkali than any fat does. */
function isFatAsGrown({ kind, tags, own }: Oil): boolean {
  return own === undefined && kind !== 'free-acid' && !tags.includes('fractionated')
}

/** The purest that what is weighed may be, percent, said once more from the order alone. */
function purestPercent(
  { purity, purityIs, purityUpTo, lyeSolution }: Reckoning['order'],
  kind: 'naoh' | 'koh',
) {
  const is = purityIs?.[kind]
  const tolerance = typeof is === 'object' ? (is.within ?? 0.5) : undefined
  const solution = lyeSolution?.[kind]
  const stated = purity[kind]
  const usual = kind === 'naoh' ? 100 : (stated ?? 0) < 92 ? 92 : 95
  const purest =
    solution !== undefined
      ? tolerance === undefined
        ? solution * 1.02
        : solution + tolerance
      : stated === undefined
        ? 100
        : tolerance !== undefined
          ? stated + tolerance
          : is === 'exactly'
            ? stated
            : Math.max(stated, usual)
  return Math.min(100, Math.max(purest, purityUpTo?.[kind] ?? 0))
}

/** How far the two reckonings may differ, percent of superfat: floating point. */
const AGREE_PERCENT = 1e-6

/**
 * What the last check refuses: alkali beyond what any fat of this weight could take, and a leanest superfat
 * other than the one that plan, sheet and warnings speak of.
 */
export function lastCheckProblems(reckoning: Reckoning, leanestPercent: number): Problem[] {
  const { alkaliMol, fatMol, acidMol, toFatMol, mostFatMol } = lastCheck(reckoning)
  if (!(toFatMol <= mostFatMol))
    return [
      problem(
        'alkali',
        `The last check found more hydroxide than any fat of this weight could take (${toFatMol.toFixed(3)} mol for at most ${mostFatMol.toFixed(3)}). Look at purity, strengths and acids again; nothing is weighed out.`,
      ),
    ]
  const leanest = percentFromFraction(1 - (alkaliMol - acidMol) / fatMol)
  if (Math.abs(leanest - leanestPercent) <= AGREE_PERCENT * Math.max(1, Math.abs(leanest)))
    return []
  return [
    problem(
      'superfat',
      `The last check comes to a leanest superfat of ${leanest.toFixed(2)} % and the plan to ${leanestPercent.toFixed(2)} %. One of them is wrong, so nothing is weighed out. This is a fault of the program: please report this order.`,
    ),
  ]
}
