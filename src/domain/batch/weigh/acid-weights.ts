import { acidEquivalents, crystalWaterGrams } from '../../chemistry/acids'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { type Acid, gramsOf } from '../order/additions'
import { type AcidFact, type BatchFacts, factOf } from '../order/facts'
import type { BatchOrder } from '../order/order'
import { roundedToNearest } from './rounding'

/** Acids as weighed in g, in the order's order: on the finer scale, at its nearest mark. */
export function acidWeights({ acids = [], scale }: BatchOrder, oilG: number): number[] {
  return acids.map((acid) => roundedToNearest(gramsOf(acid, oilG), scale?.lyeStepG))
}

/** One acid of an order as it is weighed. */
export interface WeighedAcid {
  readonly use: Acid
  readonly fact: AcidFact
  /** As weighed, g. */
  readonly grams: number
  /** Pure acid in it, g, water of crystallisation included. */
  readonly pureG: number
  /** Hydroxide it takes, mol. */
  readonly equivalentsMol: number
  /** Water it brings, g: of a solution and of crystals. */
  readonly waterG: number
}

/** The acids of an order with what they take and bring. */
export function weighedAcids(
  { acids = [] }: BatchOrder,
  acidGrams: readonly number[],
  facts: BatchFacts,
): WeighedAcid[] {
  return acids.map((use, index) => {
    const fact = factOf(facts.acids, use.acid)
    const grams = acidGrams[index] ?? 0
    const pureG = grams * strengthOf(use)
    return {
      use,
      fact,
      grams,
      pureG,
      equivalentsMol: acidEquivalents(pureG, fact),
      waterG: grams - pureG + crystalWaterGrams(pureG, fact),
    }
  })
}

/** Hydroxide that acids take, mol: all of it, or the part that is to be weighed on top. */
export function acidTakes(acids: readonly WeighedAcid[], which: 'all' | 'paid'): number {
  return acids
    .filter(({ use }) => which === 'all' || use.alkali === 'add')
    .reduce((mol, { equivalentsMol }) => mol + equivalentsMol, 0)
}

/** Pure acid in what is weighed, as a fraction. */
function strengthOf({ strengthPercent }: Acid): number {
  return strengthPercent === undefined ? 1 : fractionFromPercent(strengthPercent)
}

/**
 * How many times as much acid as reckoned is in it at the least, 0 to 1: as weak as its kind may be, or as
 * the maker says it may be; narrower only by a certificate. What may be the hydrate counts as the hydrate.
 */
export function weakestPart(use: Acid, facts: BatchFacts): number {
  const { strengthPercent = WHOLE_PERCENT, strengthFromPercent, certificate } = use
  const fact = factOf(facts.acids, use.acid)
  const stated = strengthFromPercent === undefined ? 1 : strengthFromPercent / strengthPercent
  const certified = certificate !== undefined && strengthFromPercent !== undefined
  const part = certified ? stated : Math.min(stated, fact.leastPart)
  return Math.min(1, part) * formPart(use, fact, facts)
}

/** What the weaker form of an acid holds of this one's groups, by weight; 1 where the bag is sure. */
function formPart({ formSure }: Acid, fact: AcidFact, facts: BatchFacts): number {
  const weaker = fact.weakerForm === null ? undefined : facts.acids.get(fact.weakerForm)
  if (formSure === true || !weaker) return 1
  return acidEquivalents(1, weaker) / acidEquivalents(1, fact)
}
