import { problem, type Problem } from '../../blend/check-blend'
import { percentFromFraction } from '../../units'
import { alkaliShares, type BatchOrder } from './order'
import type { Remark } from './remedy'
import { NOISE_PERCENT } from '../../noise'

/** What the alkali makes of the fat: a bar, a bar that stays soft, or a paste that is never cut. */
export type SoapKind = 'bar' | 'soft' | 'paste'

/**
 * Potassium hydroxide in percent of the equivalents from which soap is soft, and from which it is a paste:
 * assumptions of this project after common practice (shaving soaps and creams stand between them).
 */
export const SOFT_ABOVE_PERCENT = 30
export const PASTE_FROM_PERCENT = 90

/** The kind of soap that an order's alkalis make. */
export function soapKindOf(order: BatchOrder): SoapKind {
  const koh = kohPercent(order)
  if (koh >= PASTE_FROM_PERCENT - NOISE_PERCENT) return 'paste'
  return koh > SOFT_ABOVE_PERCENT + NOISE_PERCENT ? 'soft' : 'bar'
}

/** What is to be said of soap that is no firm bar. */
export function kindRemarks(order: BatchOrder): Remark[] {
  if (soapKindOf(order) !== 'soft') return []
  return [
    {
      code: 'soft',
      message: `Potassium hydroxide does ${kohPercent(order).toFixed(0)} % of the work: above about ${SOFT_ABOVE_PERCENT} % soap stays soft. It may not cut or stand like a bar.`,
    },
  ]
}

/** Bars, a cut and a cure asked of a paste. */
export function pasteProblems(order: BatchOrder): Problem[] {
  if (soapKindOf(order) !== 'paste') return []
  const why = `Potassium hydroxide does ${kohPercent(order).toFixed(0)} % of the work, and from about ${PASTE_FROM_PERCENT} % soap is a paste`
  return [
    ...(order.bars
      ? [problem('bars', `${why}: it makes no bars. Give the weight of the oils, or a vessel.`)]
      : []),
    ...(order.cut ? [problem('cut', `${why}: there is nothing to cut. Leave the cut out.`)] : []),
    ...(order.cure && Object.values(order.cure).some((value) => value !== undefined)
      ? [problem('cure', `${why}: it does not dry like a bar. Leave the cure out.`)]
      : []),
  ]
}

function kohPercent(order: BatchOrder): number {
  return percentFromFraction(alkaliShares(order).koh)
}
