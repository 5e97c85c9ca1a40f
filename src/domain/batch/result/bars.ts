import { fractionFromPercent } from '../../units'
import type { CurePlan } from '../react/cure'
import { cutLengthMm, type Mould } from '../order/mould'
import type { BatchOrder } from '../order/order'

/** What a batch is cut into. Weights of one bar in g. */
export interface BarPlan {
  readonly count: number
  readonly wetG: number
  readonly curedG: number
  readonly driestG: number
  /** Cut off or left in the pot, wet, over the whole batch. */
  readonly leftOverG: number
}

/**
 * The bars of a batch, from whichever says it: so many bars as asked, cavities, slices of a mould's length,
 * or a weight to cut to. Null where nothing does. Bars dry alike, by the batch's own loss.
 */
export function barPlan(order: BatchOrder, cure: CurePlan): BarPlan | null {
  const cut = cutOf(order, cure.freshG)
  if (!cut || !(cut.count >= 1)) return null
  return {
    count: cut.count,
    wetG: cut.wetG,
    curedG: (cut.wetG * cure.curedG) / cure.freshG,
    driestG: (cut.wetG * cure.driestG) / cure.freshG,
    leftOverG: Math.max(0, cure.freshG - cut.count * cut.wetG),
  }
}

function cutOf({ bars, cut, mould }: BatchOrder, freshG: number) {
  if (bars) {
    const trim = 1 + fractionFromPercent(bars.trimPercent ?? 0)
    return { count: bars.count, wetG: freshG / trim / bars.count }
  }
  if (mould && 'cavities' in mould) {
    const count = mould.cavities.count * (mould.count ?? 1)
    return { count, wetG: freshG / count }
  }
  if (!cut) return undefined
  if ('barGrams' in cut) return { count: Math.floor(freshG / cut.barGrams), wetG: cut.barGrams }
  return mould ? slices(mould, cut.thicknessMm, freshG) : undefined
}

/** As many whole slices as every mould's length gives. */
function slices(mould: Mould, thicknessMm: number, freshG: number) {
  const lengthMm = cutLengthMm(mould)
  if (lengthMm === undefined) return undefined
  const moulds = mould.count ?? 1
  const wetG = ((freshG / moulds) * thicknessMm) / lengthMm
  return { count: Math.floor(lengthMm / thicknessMm) * moulds, wetG }
}
