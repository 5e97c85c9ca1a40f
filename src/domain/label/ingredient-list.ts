import type { FatOutcome } from '../batch/react/outcome'
import { finishedG } from '../batch/react/fresh-soap'
import type { ReadyPlan } from '../batch/result/plan'
import { type AdditiveFact, type BatchFacts, factOf } from '../batch/order/facts'
import { liquidFatG, liquidWaterG } from '../batch/weigh/water-weights'
import { sum } from '../batch/weigh/weights'
import { type Library, oilOf } from '../blend/library'
import { fractionFromPercent } from '../units'

/** One name of an ingredient list with its weight in the batch, g. */
export interface Listed {
  readonly name: string
  readonly grams: number
  /** The name is not known for sure and must be looked up before it is printed. */
  readonly unsure: boolean
  /** Colourants may stand last, in any order. */
  readonly colourant: boolean
}

/** Names of all water and of all fragrance on a label. */
const WATER = 'Aqua'
const FRAGRANCE = 'Parfum'
const GLYCEROL = 'Glycerin'
const ALKALI = { naoh: 'Sodium Hydroxide', koh: 'Potassium Hydroxide' } as const
const ALKALIS = ['naoh', 'koh'] as const

/**
 * The ingredients as they went in, in descending weight at that time: Regulation (EC) 1223/2009, Article
 * 19(1)(g), and 21 CFR 701.3 (both recalled). Water is all water added, also that of solutions; hydroxide
 * counts as weighed, impurities and all. Under 1 % any order is allowed; theirs stays by weight.
 */
export function asPutIn(plan: ReadyPlan, library: Library, facts: BatchFacts): Listed[] {
  const { order, outcome } = plan
  const fats = [...Object.entries(plan.oilGrams), ...Object.entries(plan.extraFatGrams)]
  const solutionWater = plan.water.fromSolutionsG
  const pure = ALKALIS.map((kind) => {
    const weighed = plan.alkaliGrams[kind] ?? 0
    const strength = order.lyeSolution?.[kind]
    return certain(
      ALKALI[kind],
      strength === undefined ? weighed : weighed * fractionFromPercent(strength),
    )
  })
  const acids = outcome.salts.map(({ acid }) => certain(acid.fact.inci, acid.grams - acid.waterG))
  const acidWater = outcome.salts.reduce((g, { acid }) => g + acid.waterG, 0)
  return inOrder([
    ...fats.map(([id, grams]) => fat(id, grams, library)),
    certain(WATER, plan.waterGrams + solutionWater + acidWater + additiveWaterG(plan, facts)),
    ...pure,
    ...acids,
    ...liquidsAsPutIn(plan, facts),
    ...additives(plan, facts),
    certain(FRAGRANCE, sum(plan.fragranceGrams)),
  ])
}

/**
 * The ingredients as the bar holds them, in descending weight of the cured bar: soaps by their oils, fat left
 * over by its own name, glycerin, salts of the acids, and the water left. The sodium and potassium soaps
 * of an oil stand apart where both alkalis were used.
 */
export function asMade(plan: ReadyPlan, library: Library, facts: BatchFacts): Listed[] {
  const { outcome } = plan
  const { balance } = outcome
  const salts = outcome.salts.flatMap(({ acid, grams }) =>
    ALKALIS.map((kind) => certain(acid.fact.saltInci[kind], grams * outcome.alkaliShares[kind])),
  )
  return inOrder([
    ...outcome.fats.flatMap((one) => soaps(one, library, facts)),
    certain(GLYCEROL, balance.glycerolG),
    certain(WATER, Math.max(0, finishedG(plan).usualG - outcome.solidsG)),
    ...salts,
    ...liquidsDry(plan, facts),
    ...additives(plan, facts),
    certain(FRAGRANCE, balance.fragranceG),
    ...ALKALIS.map((kind) =>
      certain(ALKALI[kind], balance.freeAlkaliG * outcome.alkaliShares[kind]),
    ),
  ])
}

function soaps(outcome: FatOutcome, library: Library, facts: BatchFacts): Listed[] {
  const { part, soapG, unreactedG, waxAlcoholG } = outcome
  if (part.from === 'liquid') {
    const { inci } = factOf(facts.liquids, part.id)
    const grams = soapG.naoh + soapG.koh + unreactedG
    return [certain(inci, grams)]
  }
  const { inci } = oilOf(library, part.id)
  return [
    soap(inci.sodiumSoap, 'sodium', soapG.naoh, part.id, library),
    soap(inci.potassiumSoap, 'potassium', soapG.koh, part.id, library),
    fat(part.id, unreactedG, library),
    { ...certain('Jojoba Alcohol', waxAlcoholG), unsure: true },
  ]
}

/** A soap's name where the library knows it, else what it is in words, to be looked up. */
function soap(
  known: string | null,
  metal: 'sodium' | 'potassium',
  grams: number,
  id: string,
  library: Library,
): Listed {
  const { inci, name } = oilOf(library, id)
  const described = `[${metal} soap of ${inci.oil ?? name}]`
  return { name: known ?? described, grams, unsure: known === null, colourant: false }
}

function fat(id: string, grams: number, library: Library): Listed {
  const { inci, name } = oilOf(library, id)
  return { name: inci.oil ?? `[${name}]`, grams, unsure: inci.oil === null, colourant: false }
}

function liquidsAsPutIn(plan: ReadyPlan, facts: BatchFacts): Listed[] {
  return (plan.order.liquids ?? []).map((use, i) =>
    certain(factOf(facts.liquids, use.liquid).inci, plan.liquidGrams[i] ?? 0),
  )
}

/** What is left of a liquid when its water has gone to the water and its fat to the fats. */
function liquidsDry(plan: ReadyPlan, facts: BatchFacts): Listed[] {
  return (plan.order.liquids ?? []).map((use, i) => {
    const fact = factOf(facts.liquids, use.liquid)
    const grams = plan.liquidGrams[i] ?? 0
    return certain(fact.inci, grams - liquidWaterG(use, fact, grams) - liquidFatG(use, fact, grams))
  })
}

function additives(plan: ReadyPlan, facts: BatchFacts): Listed[] {
  return (plan.order.additives ?? []).map(({ additive }, i) => {
    const fact: AdditiveFact = factOf(facts.additives, additive)
    const dry = 1 - fractionFromPercent(fact.waterPercent)
    return {
      name: fact.inci,
      grams: (plan.additiveGrams[i] ?? 0) * dry,
      unsure: false,
      colourant: fact.colourant,
    }
  })
}

/** Water that additives bring, such as lactate sold as a solution, g. */
function additiveWaterG({ order, additiveGrams }: ReadyPlan, facts: BatchFacts): number {
  return (order.additives ?? []).reduce((g, { additive }, i) => {
    const { waterPercent } = factOf(facts.additives, additive)
    return g + (additiveGrams[i] ?? 0) * fractionFromPercent(waterPercent)
  }, 0)
}

function certain(name: string, grams: number): Listed {
  return { name, grams, unsure: false, colourant: false }
}

/** Weights below this are none, g. */
const NOTHING_G = 1e-9

/** One line a name, heaviest first, colourants last, without what weighs nothing. */
function inOrder(listed: readonly Listed[]): Listed[] {
  const merged = new Map<string, Listed>()
  for (const one of listed) {
    const before = merged.get(one.name)
    const grams = one.grams + (before?.grams ?? 0)
    merged.set(one.name, { ...one, grams, unsure: one.unsure || (before?.unsure ?? false) })
  }
  return [...merged.values()]
    .filter(({ grams }) => grams > NOTHING_G)
    .sort((a, b) => Number(a.colourant) - Number(b.colourant) || b.grams - a.grams)
}
