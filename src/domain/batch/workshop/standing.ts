import type { Library } from '../../blend/library'
import { fractionFromPercent } from '../../units'
import { acidTakes, weighedAcids } from '../weigh/acid-weights'
import { type Actuals, actualWeights } from '../actual/actual-weights'
import { alkaliWeights, weighedAlkalis } from '../weigh/alkali-weights'
import type { BatchFacts } from '../order/facts'
import type { Ingredient } from '../result/ingredients'
import { fatEquivalents } from '../weigh/lots'
import type { ReadyPlan } from '../result/plan'
import type { Reckoning } from '../weigh/reckoning'
import type { LyePart } from '../actual/vessels'
import { waterWeights } from '../weigh/water-weights'
import { sum } from '../weigh/weights'

/** Under which the lye that went into the pot is noted, where only a part of it was to. */
export const PART_KEY = 'lyePart'

/** What has been weighed on the bench so far. */
export interface BenchRun {
  /** As weighed, g, by the key of its line. */
  readonly actual: Actuals
  /** Weights off the plan that the maker leaves as they are, g; another weight is not left. */
  readonly left: Actuals
  /** Weights passed over that can't change any more, as they were then asked, g. */
  readonly assumed?: Actuals | undefined
  /** Where only a part of the lye is used. */
  readonly part?: LyePart | undefined
}

/** Data that weights are reckoned with. */
export interface Known {
  readonly library: Library
  readonly facts: BatchFacts
}

/** A batch as it stands at the bench: lines not yet weighed count as they are asked now. */
export interface Standing {
  /** What each line is asked now, g by key: as planned, or what follows from what was left off the plan. */
  readonly asked: Actuals
  /** What was weighed, and what is asked where nothing was, g by key. */
  readonly weighed: Actuals
  /** What is in the pot in the end, g by key: of the jug only the part that is used. */
  readonly inPot: Actuals
  /** The part of the lye in use, where it still fits what is in the jug. */
  readonly part: LyePart | undefined
  readonly reckoning: Reckoning
}

/** Stages whose lines are weighed into the jug. */
const JUG_STAGES: readonly string[] = ['water', 'lye']

/** Whether a line is weighed into the jug and so is poured into the pot as lye. */
export function isInJug({ stage }: Pick<Ingredient, 'stage'>): boolean {
  return JUG_STAGES.includes(stage)
}

/** The batch as it stands: pure, and the same for the same run. */
export function standingOf(plan: ReadyPlan, run: BenchRun, known: Known): Standing {
  const asked = askedNow(plan, run, known)
  const weighed = { ...asked, ...run.assumed, ...run.actual }
  const part = fittingPart(plan, weighed, partPoured(run))
  const inPot = part ? withPart(plan, weighed, part) : weighed
  return { asked, weighed, inPot, part, reckoning: reckoningOf(plan, inPot, known) }
}

/** A plan's order with these weights, g by key. */
export function reckoningOf(plan: ReadyPlan, grams: Actuals, known: Known): Reckoning {
  return { order: plan.order, weights: actualWeights(plan, grams), ...known }
}

/** All that the jug holds, g. */
export function jugG(plan: ReadyPlan, grams: Actuals): number {
  return plan.ingredients
    .filter(isInJug)
    .reduce((total, { key, grams: planned }) => total + (grams[key] ?? planned), 0)
}

/** Weights in the pot where only a part of the lye is used, g by key. */
export function withPart(plan: ReadyPlan, grams: Actuals, part: LyePart): Actuals {
  const fraction = part.usedG / part.ofG
  const scaled = plan.ingredients.filter(isInJug).map(({ key, grams: planned }) => {
    const used = (grams[key] ?? planned) * fraction
    return [key, key === 'water' ? used + part.waterG : used] as const
  })
  return { ...grams, ...Object.fromEntries(scaled) }
}

/** The part of the lye as it was really poured, once it was. */
function partPoured({ part, actual }: BenchRun): LyePart | undefined {
  return part && { ...part, usedG: actual[PART_KEY] ?? part.usedG }
}

/** Lye this much off what the part was reckoned of is another lye, g. */
const SAME_LYE_G = 0.05

function fittingPart(plan: ReadyPlan, weighed: Actuals, part: LyePart | undefined) {
  return part && Math.abs(part.ofG - jugG(plan, weighed)) <= SAME_LYE_G ? part : undefined
}

/**
 * What each line is asked now. Where oils or acids were left off the plan, the hydroxide follows: the same
 * superfat of what is really there, T·(1 − s) + acids, rounded down; and the water follows the hydroxide.
 */
function askedNow(plan: ReadyPlan, run: BenchRun, { library, facts }: Known): Actuals {
  const planned = Object.fromEntries(plan.ingredients.map(({ key, grams }) => [key, grams]))
  const kept = leftBy(plan, run)
  if (Object.keys(kept).length === 0) return planned
  const { order } = plan
  const { oilGrams, acidGrams } = actualWeights(plan, kept)
  const acids = weighedAcids(order, acidGrams, facts)
  const boundMol =
    fatEquivalents(oilGrams, library, 'typical', order.lots) *
    (1 - fractionFromPercent(order.superfat))
  const alkaliGrams = alkaliWeights(order, boundMol + acidTakes(acids, 'paid'))
  const alkalis = weighedAlkalis(order, alkaliGrams)
  const { ledger } = waterWeights(order, { alkalis, acids, oilG: sum(oilGrams) }, facts)
  const follows: Actuals = {
    ...Object.fromEntries(
      Object.entries(alkaliGrams).map(([kind, grams]) => [`alkali:${kind}`, Math.max(0, grams)]),
    ),
    water: ledger.plainG,
    cookWater: ledger.cookG,
  }
  return Object.fromEntries(
    Object.entries(planned).map(([key, grams]) => [key, follows[key] ?? grams]),
  )
}

/** Oils and acids that are left off the plan, g by key. */
function leftBy(plan: ReadyPlan, { actual, left }: BenchRun): Actuals {
  return Object.fromEntries(
    plan.ingredients.flatMap(({ key, kind }) => {
      const grams = actual[key]
      const follows = kind === 'oil' || kind === 'acid'
      return follows && grams !== undefined && grams === left[key] ? [[key, grams]] : []
    }),
  )
}
