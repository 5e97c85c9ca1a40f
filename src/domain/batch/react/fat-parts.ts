import { type Library, oilOf } from '../../blend/library'
import type { OilKind } from '../../blend/oil'
import { alkaliEquivalents } from '../../chemistry/alkali'
import { JOJOBA_REST, type WaxRest } from '../../chemistry/ester'
import { type BatchFacts, factOf } from '../order/facts'
import { bindsOf, reactingPart } from '../weigh/lots'
import type { BatchOrder } from '../order/order'
import type { Grams, Weights } from '../weigh/weights'
import { liquidFatG } from '../weigh/water-weights'

/** One fat in the pot. */
export interface FatPart {
  /** Oil id, or the id of the liquid whose fat it is. */
  readonly id: string
  readonly from: 'oil' | 'liquid'
  readonly grams: number
  /** What it binds at typical values, mol. */
  readonly equivalentsMol: number
  /** The part of it that alkali reaches at all, 0 to 1; the rest of a wax stays as it is. */
  readonly reactingPart: number
  readonly kind: OilKind
  /** What goes free beside the acids of a wax; of no meaning for any other kind. */
  readonly waxRest: WaxRest
  /** Stirred in when the cook is done, so that alkali reaches it last. */
  readonly late: boolean
}

/** All fat of a batch: blend, extra fat and the fat of milk and the like. */
export function fatParts(
  order: BatchOrder,
  weights: Weights,
  library: Library,
  facts: BatchFacts,
): FatPart[] {
  const parts = (grams: Grams, late: boolean) =>
    Object.entries(grams).map(([id, g]): FatPart => {
      const oil = oilOf(library, id)
      const equivalentsMol = alkaliEquivalents(g, bindsOf(id, library, order).typical)
      const part = reactingPart(oil, order).typical
      return {
        id,
        from: 'oil',
        grams: g,
        equivalentsMol,
        reactingPart: part,
        kind: oil.kind,
        waxRest: oil.waxRest ?? JOJOBA_REST,
        late,
      }
    })
  return [
    ...parts(weights.oilGrams, false),
    ...parts(weights.extraFatGrams, order.extraFat?.when === 'afterCook'),
    ...(order.liquids ?? []).flatMap((use, index) => {
      const fact = factOf(facts.liquids, use.liquid)
      const grams = liquidFatG(use, fact, weights.liquidGrams[index] ?? 0)
      return grams > 0 ? [liquidFat(use.liquid, grams, fact.fatSaponificationValue)] : []
    }),
  ]
}

function liquidFat(id: string, grams: number, saponificationValue: number): FatPart {
  return {
    id,
    from: 'liquid',
    grams,
    equivalentsMol: alkaliEquivalents(grams, saponificationValue),
    reactingPart: 1,
    kind: 'triglyceride',
    waxRest: JOJOBA_REST,
    late: false,
  }
}
