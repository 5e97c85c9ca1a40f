import { alkaliGrams, type AlkaliKind, equivalentsIn } from '../../chemistry/alkali'
import { contentOf } from '../order/purity'
import { alkaliShares, alkalisOf, type BatchOrder } from '../order/order'
import { roundedDown } from './rounding'

/** Hydroxide as weighed, by kind: flakes with their impurities, or a solution with its water. */
export type AlkaliGrams = Readonly<Partial<Record<AlkaliKind, number>>>

/**
 * Alkali to weigh for so many mol, rounded down: share × mol × M / content. Content is the purity of
 * flakes or the strength of a solution.
 */
export function alkaliWeights(order: BatchOrder, equivalentsMol: number): AlkaliGrams {
  const shares = alkaliShares(order)
  return Object.fromEntries(
    alkalisOf(order).map((kind) => [
      kind,
      roundedDown(
        alkaliGrams(equivalentsMol * shares[kind], kind) / contentOf(order, kind),
        order.scale?.lyeStepG,
      ),
    ]),
  )
}

/** One alkali of an order as it is weighed. */
export interface WeighedAlkali {
  readonly kind: AlkaliKind
  /** As weighed, g. */
  readonly grams: number
  readonly form: 'dry' | 'solution'
  /** Pure hydroxide in it, g and mol. */
  readonly pureG: number
  readonly equivalentsMol: number
  /** Water of a solution, g; 0 for flakes, whose impurities are not counted as water for the lye. */
  readonly waterG: number
}

/** The alkalis of an order with what is in them. */
export function weighedAlkalis(order: BatchOrder, weights: AlkaliGrams): WeighedAlkali[] {
  return alkalisOf(order).map((kind) => {
    const grams = weights[kind] ?? 0
    const form = order.lyeSolution?.[kind] === undefined ? 'dry' : 'solution'
    const pureG = grams * contentOf(order, kind)
    return {
      kind,
      grams,
      form,
      pureG,
      equivalentsMol: equivalentsIn(grams, contentOf(order, kind), kind),
      waterG: form === 'solution' ? grams - pureG : 0,
    }
  })
}
