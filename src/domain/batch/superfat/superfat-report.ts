import { percentFromFraction } from '../../units'
import { acidTakes, weighedAcids } from '../weigh/acid-weights'
import { askedTogether, leastSafePercent } from './least-safe'
import { type LikelySuperfat, likelySuperfat } from './likely'
import { fatEquivalents } from '../weigh/lots'
import { errorsOf, EXACT, superfatAt, superfatSpan } from './reach'
import type { Interval } from '../../interval'
import type { Reckoning } from '../weigh/reckoning'
import { isCertified } from '../order/purity'
import { type Standing, standsOn, standsOnSentence } from './stands-on'
import { sum } from '../weigh/weights'

/** Everything about the fat that is left over; percent of the equivalents of all fat unless said. */
export interface SuperfatReport {
  /** Lye discount and extra fat together, as asked. */
  readonly askedPercent: number
  /** As weighed, at typical saponification values. */
  readonly typicalPercent: number
  /** What the lots of the oils can make of it. */
  readonly lotsPercent: Interval
  /** The same with the scale's error, the purity's upper end and the acids' lower end. */
  readonly reachPercent: Interval
  /** Whether scales were stated, so that their error and rounding are in `reachPercent`. */
  readonly scaleKnown: boolean
  /** While it cooks, before the fat kept back is in; null where none is kept back. */
  readonly inCook: {
    readonly typicalPercent: number
    readonly reachPercent: Interval
    readonly likely: LikelySuperfat
  } | null
  /** Nineteen lots in twenty, and how many would hold free alkali; decides whether a sheet is printed. */
  readonly likely: LikelySuperfat
  /** The worst there can be, were the certificates of lots and alkalis not those of what is in hand. */
  readonly withoutCertificatesPercent: Interval | null
  /** What each figure at the lean end stands on, and the same in a sentence. */
  readonly standsOn: readonly Standing[]
  readonly standsOnWords: string
  /** The lye discount to ask for so that the leanest lots end at 0 or above; null where none does. */
  readonly leastSafePercent: number | null
  /** The extra fat as part of three wholes; null without. They differ: say which is meant. */
  readonly extraFat: {
    readonly ofEquivalentsPercent: number
    readonly ofAllFatPercent: number
    readonly ofOilsPercent: number
  } | null
  /** Points of superfat that come of acids whose hydroxide is not weighed on top. */
  readonly fromUnpaidAcidsPercent: number
}

/** The superfat of a batch and how far it reaches. */
export function superfatReport(reckoning: Reckoning): SuperfatReport {
  const { order, weights, library, facts } = reckoning
  const baseMol = fatEquivalents(weights.oilGrams, library, 'typical', order)
  const extraMol = fatEquivalents(weights.extraFatGrams, library, 'typical', order)
  const acids = weighedAcids(order, weights.acidGrams, facts)
  const unpaidMol = acidTakes(acids, 'all') - acidTakes(acids, 'paid')
  const errors = errorsOf(order)
  const standings = standsOn(reckoning)
  return {
    askedPercent: askedTogether(order.superfat, baseMol, extraMol),
    typicalPercent: superfatAt(reckoning, 'typical'),
    lotsPercent: superfatSpan(reckoning, EXACT),
    reachPercent: superfatSpan(reckoning, errors),
    likely: likelySuperfat(reckoning),
    withoutCertificatesPercent: withoutCertificates(reckoning),
    standsOn: standings,
    standsOnWords: standsOnSentence(standings),
    scaleKnown: order.scale !== undefined,
    inCook: order.extraFat?.when === 'afterCook' ? inCook(reckoning) : null,
    leastSafePercent: leastSafePercent(reckoning, errors),
    extraFat: order.extraFat ? extraFatWays(reckoning, baseMol, extraMol) : null,
    fromUnpaidAcidsPercent: percentFromFraction(unpaidMol / (baseMol + extraMol)),
  }
}

/** The wide span beside the narrow one: certificates are sometimes those of another lot. */
function withoutCertificates(reckoning: Reckoning): Interval | null {
  const { order } = reckoning
  const lots = Object.values(order.lots ?? {}).some((lot) => lot.saponificationValue !== undefined)
  const alkalis = Object.values(order.purityIs ?? {}).some(isCertified)
  if (!lots && !alkalis) return null
  const bare = { ...order, lots: undefined, purityIs: undefined }
  return superfatSpan({ ...reckoning, order: bare }, errorsOf(bare))
}

function inCook(reckoning: Reckoning) {
  return {
    typicalPercent: superfatAt(reckoning, 'typical', EXACT, 'inCook'),
    reachPercent: superfatSpan(reckoning, errorsOf(reckoning.order), 'inCook'),
    likely: likelySuperfat(reckoning, 'inCook'),
  }
}

function extraFatWays({ weights }: Reckoning, baseMol: number, extraMol: number) {
  const [oils, extra] = [sum(weights.oilGrams), sum(weights.extraFatGrams)]
  return {
    ofEquivalentsPercent: percentFromFraction(extraMol / (baseMol + extraMol)),
    ofAllFatPercent: percentFromFraction(extra / (oils + extra)),
    ofOilsPercent: percentFromFraction(extra / oils),
  }
}
