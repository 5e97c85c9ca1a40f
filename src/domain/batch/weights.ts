import { normalised, withoutTraces } from '../blend/blend'
import { type Library, oilOf } from '../blend/library'
import { alkaliEquivalents, alkaliGrams, type AlkaliKind } from '../chemistry/alkali'
import { fractionFromPercent } from '../units'
import { alkalisOf, type BatchOrder, type WaterRule } from './order'
import { roundedDown, roundedToNearest, roundedUp } from './rounding'

/** What to put on the scale, in g. */
export interface Weights {
  readonly oilGrams: Readonly<Record<string, number>>
  /** Hydroxide as weighed, impurities included. */
  readonly alkaliGrams: Readonly<Partial<Record<AlkaliKind, number>>>
  readonly waterGrams: number
  readonly totalGrams: number
}

/**
 * Weights for so many grams of oils. Oils are rounded to the scale first, the hydroxide is reckoned from
 * the oils as they will be weighed and rounded down, and water is rounded up: so no rounding can make the
 * batch more alkaline than asked.
 */
export function weightsFor(order: BatchOrder, oilG: number, library: Library): Weights {
  const oilStep = order.scale?.oilStepG
  const oils = mapValues(normalised(withoutTraces(order.blend, 0)), (share) =>
    roundedToNearest(oilG * fractionFromPercent(share), oilStep),
  )
  const equivalents = fatEquivalents(oils, library, 'typical')
  const bound = equivalents * (1 - fractionFromPercent(order.superfat))
  const alkali = Object.fromEntries(
    alkalisOf(order).map((kind) => [
      kind,
      roundedDown(
        alkaliGrams(bound * shareOf(order, kind), kind) / purityOf(order, kind),
        order.scale?.lyeStepG,
      ),
    ]),
  )
  const [oilSum, alkaliSum] = [sum(oils), sum(alkali)]
  const water = roundedUp(waterFor(order.water, alkaliSum, oilSum), order.scale?.oilStepG)
  return {
    oilGrams: oils,
    alkaliGrams: alkali,
    waterGrams: water,
    totalGrams: oilSum + alkaliSum + water,
  }
}

/** Alkali the oils can bind in mol, at the low end, middle or high end of each oil's saponification value. */
export function fatEquivalents(
  oilGrams: Readonly<Record<string, number>>,
  library: Library,
  end: 'low' | 'typical' | 'high',
): number {
  return Object.entries(oilGrams).reduce((mol, [oil, grams]) => {
    const value = oilOf(library, oil).saponificationValue[end]
    return mol + alkaliEquivalents(grams, value)
  }, 0)
}

/** Water in g for hydroxide as weighed and oils, both in g. */
export function waterFor(rule: WaterRule, alkaliG: number, oilG: number): number {
  if ('ratio' in rule) return alkaliG * rule.ratio
  if ('percentOfOils' in rule) return oilG * fractionFromPercent(rule.percentOfOils)
  return alkaliG * (1 / fractionFromPercent(rule.lyeConcentration) - 1)
}

/** Purity of an alkali as a fraction; 1 where none is stated, which errs towards more fat. */
export function purityOf(order: BatchOrder, kind: AlkaliKind): number {
  const percent = order.purity[kind]
  return percent === undefined ? 1 : fractionFromPercent(percent)
}

/** The part of the equivalents that an alkali takes, 0 to 1. */
function shareOf(order: BatchOrder, kind: AlkaliKind): number {
  const total = (order.alkali.naoh ?? 0) + (order.alkali.koh ?? 0)
  return (order.alkali[kind] ?? 0) / total
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
