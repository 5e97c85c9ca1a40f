import { normalised, withoutTraces } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { extraFatGrams } from '../../chemistry/superfat'
import { fractionFromPercent } from '../../units'
import { acidTakes, acidWeights, weighedAcids } from './acid-weights'
import { gramsOf } from '../order/additions'
import { type AlkaliGrams, alkaliWeights, weighedAlkalis } from './alkali-weights'
import { type BatchFacts, NO_FACTS } from '../order/facts'
import { bindsOf, fatEquivalents } from './lots'
import type { BatchOrder } from '../order/order'
import { roundedToNearest, roundedUp } from './rounding'
import { type WaterLedger, waterWeights } from './water-weights'

/** Weights by what is weighed, g. */
export type Grams = Readonly<Record<string, number>>

/** What to put on the scale, in g. */
export interface Weights {
  readonly oilGrams: Grams
  /** Fat beside the blend, with the oils or after the cook. */
  readonly extraFatGrams: Grams
  /** Hydroxide as weighed, impurities included; of a solution, the solution. */
  readonly alkaliGrams: AlkaliGrams
  /** In the order's order, as are liquids and additives. */
  readonly acidGrams: readonly number[]
  readonly liquidGrams: readonly number[]
  readonly additiveGrams: readonly number[]
  readonly fragranceGrams: Grams
  /** Plain water: for the lye and to boil off in the cook. */
  readonly waterGrams: number
  readonly water: WaterLedger
  /** Water that liquids bring beyond what was asked, g; above 0 the order can't be kept. */
  readonly waterOverG: number
  readonly totalGrams: number
}

/**
 * Weights for so many grams of oils. Oils are rounded to the scale first, then acids; the hydroxide is
 * reckoned from both as they will be weighed and rounded down, extra fat and water are rounded up: so no
 * rounding can make the batch more alkaline than asked.
 *
 * Hydroxide = T·(1 − s) + what acids take, in mol, with T = Σ g × SV / 56105 over the blend and s the
 * lye discount. Extra fat gets none.
 */
export function weightsFor(
  order: BatchOrder,
  oilG: number,
  library: Library,
  facts: BatchFacts = NO_FACTS,
): Weights {
  const oilGrams = mapValues(normalised(withoutTraces(order.blend, 0)), (share) =>
    roundedToNearest(oilG * fractionFromPercent(share), order.scale?.oilStepG),
  )
  const oilSum = sum(oilGrams)
  const acidGrams = acidWeights(order, oilSum)
  const acids = weighedAcids(order, acidGrams, facts)
  const fatMol = fatEquivalents(oilGrams, library, 'typical', order)
  const boundMol = fatMol * (1 - fractionFromPercent(order.superfat))
  const alkaliGrams = alkaliWeights(order, boundMol + acidTakes(acids, 'paid'))
  const alkalis = weighedAlkalis(order, alkaliGrams)
  const { liquids, ledger, missingG } = waterWeights(order, { alkalis, acids, oilG: oilSum }, facts)
  const parts = {
    oilGrams,
    extraFatGrams: extraFatWeights(order, oilSum, fatMol, library),
    alkaliGrams,
    acidGrams,
    liquidGrams: liquids.map(({ grams }) => grams),
    additiveGrams: (order.additives ?? []).map((one) => onFineScale(gramsOf(one, oilSum), order)),
    fragranceGrams: fragranceWeights(order, oilSum),
    waterGrams: ledger.plainG + ledger.cookG,
  }
  return {
    ...parts,
    water: ledger,
    waterOverG: 'onlyFromLiquids' in order.water ? 0 : Math.max(0, -missingG),
    totalGrams: totalOf(parts),
  }
}

function extraFatWeights(
  order: BatchOrder,
  oilG: number,
  equivalentsMol: number,
  library: Library,
): Grams {
  const { extraFat, scale } = order
  if (!extraFat) return {}
  const oils = normalised(withoutTraces(extraFat.oils, 0))
  const value = Object.entries(oils).reduce(
    (sum, [oil, share]) => sum + fractionFromPercent(share) * bindsOf(oil, library, order).typical,
    0,
  )
  const part = fractionFromPercent(extraFat.percent)
  const grams = extraFatGrams(part, extraFat.of, { oilG, equivalentsMol }, value)
  return mapValues(oils, (share) => roundedUp(grams * fractionFromPercent(share), scale?.oilStepG))
}

function fragranceWeights(order: BatchOrder, oilG: number): Grams {
  const { fragrance } = order
  if (!fragrance) return {}
  const grams = gramsOf(fragrance, oilG)
  return mapValues(normalised(withoutTraces(fragrance.blend, 0)), (share) =>
    onFineScale(grams * fractionFromPercent(share), order),
  )
}

function onFineScale(grams: number, { scale }: BatchOrder): number {
  return roundedToNearest(grams, scale?.lyeStepG)
}

function totalOf(parts: Omit<Weights, 'water' | 'waterOverG' | 'totalGrams'>): number {
  const { oilGrams, extraFatGrams, alkaliGrams, fragranceGrams, waterGrams } = parts
  const records = [oilGrams, alkaliGrams, extraFatGrams, fragranceGrams].map(sum)
  const lists = [...parts.acidGrams, ...parts.liquidGrams, ...parts.additiveGrams]
  return [...records, ...lists].reduce((total, grams) => total + grams, waterGrams)
}

function mapValues(
  record: Readonly<Record<string, number>>,
  change: (value: number) => number,
): Record<string, number> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]))
}

/** Sum of weights in g. */
export function sum(record: Readonly<Partial<Record<string, number>>>): number {
  return Object.values(record).reduce<number>((total, grams) => total + (grams ?? 0), 0)
}
