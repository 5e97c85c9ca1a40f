import { batchFacts } from '../data/batch-facts'
import { library } from './library'
import { alkalisOf, type BatchOrder, type PerAlkali } from '../domain/batch/order/order'
import { planBatch } from '../domain/batch/result/plan'
import type { AlkaliKind } from '../domain/chemistry/alkali'
import { type BatchChoices, otherAlkali, type SecondAlkali } from './batch-choices'

/**
 * The choices that weigh out an order, with what the order does not speak of (unit, paper) from before.
 * `purity` is that of an alkali whose purity the order does not state, percent.
 */
export function choicesOf(
  order: BatchOrder,
  before: BatchChoices,
  purity: Readonly<Record<AlkaliKind, number>>,
): BatchChoices {
  const {
    blend: _blend,
    oilGrams = before.oilGrams,
    alkali,
    alkaliBy,
    superfat,
    scale,
    ...extras
  } = order
  const [first, second] = byShare(order)
  return {
    ...extras,
    unit: before.unit,
    paper: before.paper,
    oilGrams,
    alkali: first,
    ...(second && { secondAlkali: secondOf(alkali, second, alkaliBy) }),
    purity: { ...purity, ...stated(order.purity) },
    superfatPercent: superfat,
    waterTyped: true,
    scale: scale ?? before.scale,
    lyeStepChosen: scale !== undefined || before.lyeStepChosen,
    ...leanAt(order),
  }
}

/** The alkalis of an order, the one that does most first. */
function byShare(order: BatchOrder): [AlkaliKind, AlkaliKind | undefined] {
  const [only = 'naoh', other] = alkalisOf(order)
  if (!other) return [only, undefined]
  const more = (order.alkali[only] ?? 0) >= (order.alkali[other] ?? 0) ? only : other
  return [more, otherAlkali(more)]
}

function secondOf(
  alkali: PerAlkali,
  second: AlkaliKind,
  by: BatchOrder['alkaliBy'] = 'mol',
): SecondAlkali {
  return { percent: alkali[second] ?? 0, by }
}

function stated(purity: PerAlkali): Partial<Record<AlkaliKind, number>> {
  return Object.fromEntries(Object.entries(purity).filter(([, value]) => value !== undefined))
}

/** How lean the lots were of which the maker said that they may be: what was said holds for no leaner ones. */
function leanAt(order: BatchOrder): Pick<BatchChoices, 'confirmedLeanAt' | 'leanSeenAt'> {
  const { confirmedLean, leanSeen } = order
  if (confirmedLean === undefined && leanSeen !== true) return {}
  const unsaid = { ...order, confirmedLean: undefined, leanSeen: undefined }
  const plan = planBatch(unsaid, library, batchFacts)
  if (plan.status === 'invalid') return {}
  return {
    confirmedLeanAt: confirmedLean === undefined ? undefined : plan.blocked?.leanestPercent,
    leanSeenAt: leanSeen === true ? plan.superfat.reachPercent.min : undefined,
  }
}
