import { fractionFromPercent } from '../../units'
import type { WeighedAcid } from './acid-weights'
import type { Liquid } from '../order/additions'
import type { WeighedAlkali } from './alkali-weights'
import { type BatchFacts, factOf, type LiquidFact } from '../order/facts'
import type { BatchOrder, LiquidsOnly, WaterRule } from '../order/order'
import { roundedToNearest, roundedUp } from './rounding'

/** Where the water of a batch comes from, g. */
export interface WaterLedger {
  /** What the rule asks for. */
  readonly askedG: number
  readonly fromSolutionsG: number
  readonly fromAcidsG: number
  readonly fromLiquidsG: number
  /** Of that, what goes into the lye and not to trace. */
  readonly fromLiquidsInLyeG: number
  /** Plain water for the lye. */
  readonly plainG: number
  /** Plain water on top, to boil off in the cook. */
  readonly cookG: number
}

/** Liquid of an order as it is weighed. */
export interface WeighedLiquid {
  readonly use: Liquid
  readonly fact: LiquidFact
  readonly grams: number
  readonly waterG: number
  readonly fatG: number
}

/** What decides the water. */
export interface WaterNeeds {
  readonly alkalis: readonly WeighedAlkali[]
  readonly acids: readonly WeighedAcid[]
  readonly oilG: number
}

/** All water and liquids of an order. */
export function waterWeights(order: BatchOrder, needs: WaterNeeds, facts: BatchFacts) {
  const step = order.scale?.oilStepG
  const fromSolutionsG = total(needs.alkalis.map(({ waterG }) => waterG))
  const fromAcidsG = total(needs.acids.map(({ waterG }) => waterG))
  const askedG = waterFor(order.water, lyeBasisG(order, needs.alkalis), needs.oilG)
  const liquids = (order.liquids ?? []).map((use) => weighedLiquid(use, askedG, step, facts))
  const fromLiquidsG = total(liquids.map(({ waterG }) => waterG))
  const inLye = liquids.filter(({ use }) => use.when === 'lye')
  const missingG = askedG - fromSolutionsG - fromAcidsG - fromLiquidsG
  const cookG = needs.oilG * fractionFromPercent(order.cook?.extraWaterPercentOfOils ?? 0)
  const ledger: WaterLedger = {
    askedG,
    fromSolutionsG,
    fromAcidsG,
    fromLiquidsG,
    fromLiquidsInLyeG: total(inLye.map(({ waterG }) => waterG)),
    plainG: roundedUp(Math.max(0, missingG), step),
    cookG: roundedUp(cookG, step),
  }
  return { liquids, ledger, missingG }
}

/**
 * Hydroxide in g that water is reckoned on: flakes as weighed (or pure, where the order says so);
 * of a solution always the pure hydroxide in it, as there is no dry weight to speak of.
 */
export function lyeBasisG({ waterOn }: BatchOrder, alkalis: readonly WeighedAlkali[]): number {
  return total(
    alkalis.map(({ form, grams, pureG }) =>
      form === 'solution' || waterOn === 'pure' ? pureG : grams,
    ),
  )
}

/** Water in g for hydroxide and oils, both in g; nothing where only liquids bring it. */
export function waterFor(rule: WaterRule | LiquidsOnly, alkaliG: number, oilG: number): number {
  if ('onlyFromLiquids' in rule) return 0
  if ('ratio' in rule) return alkaliG * rule.ratio
  if ('percentOfOils' in rule) return oilG * fractionFromPercent(rule.percentOfOils)
  return alkaliG * (1 / fractionFromPercent(rule.lyeConcentration) - 1)
}

/** All water there is when lye meets oil, g: what the lye's strength is reckoned from. */
export function lyeWaterG(ledger: WaterLedger): number {
  return ledger.plainG + ledger.fromSolutionsG + ledger.fromAcidsG + ledger.fromLiquidsG
}

/** Water in the jug while the hydroxide dissolves, g; liquids that wait for trace are not there yet. */
export function jugWaterG({
  plainG,
  cookG,
  fromSolutionsG,
  fromAcidsG,
  fromLiquidsInLyeG,
}: WaterLedger) {
  return plainG + cookG + fromSolutionsG + fromAcidsG + fromLiquidsInLyeG
}

function weighedLiquid(
  use: Liquid,
  askedG: number,
  stepG: number | undefined,
  facts: BatchFacts,
): WeighedLiquid {
  const fact = factOf(facts.liquids, use.liquid)
  const water = liquidWaterG(use, fact, 1)
  const replaced = askedG * fractionFromPercent(use.replacesPercent ?? 0)
  const grams = roundedToNearest(use.grams ?? replaced / water, stepG)
  return { use, fact, grams, waterG: grams * water, fatG: liquidFatG(use, fact, grams) }
}

/** Fat in g that so many grams of a liquid bring. */
export function liquidFatG({ fatPercent }: Liquid, fact: LiquidFact, grams: number): number {
  return grams * fractionFromPercent(fatPercent ?? fact.fatPercent)
}

/** Water in g that so many grams of a liquid bring. */
export function liquidWaterG({ waterPercent }: Liquid, fact: LiquidFact, grams: number): number {
  return grams * fractionFromPercent(waterPercent ?? fact.waterPercent)
}

function total(grams: readonly number[]): number {
  return grams.reduce((sum, one) => sum + one, 0)
}
