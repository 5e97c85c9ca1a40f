import type { AlkaliKind } from '../../chemistry/alkali'
import { ALKALI_MOLAR_MASS } from '../../chemistry/alkali'
import { fractionFromPercent } from '../../units'
import { purer } from '../superfat/least-safe'
import { alkaliShares, alkalisOf } from '../order/order'
import type { ReadyPlan } from '../result/plan'
import { contentOf } from '../order/purity'
import { endsOf, errorsOf, EXACT } from '../superfat/reach'
import { type Superfats, superfatsOf } from '../superfat/superfats'
import type { Reckoning } from '../weigh/reckoning'
import { roundedDown, roundedUp } from '../weigh/rounding'

/**
 * Alkali that would bring a batch with too little of it to the superfat asked, and what that comes to with
 * every weighing as wrong as may be.
 */
export interface LyeTopUp extends Superfats {
  /** As it is weighed, impurities included; of a solution, the solution. g. */
  readonly alkaliGrams: Readonly<Partial<Record<AlkaliKind, number>>>
  /** Water to dissolve it in first; 0 where it comes as a solution. g. */
  readonly waterGrams: number
}

/** Water for each g of hydroxide at least, so that it dissolves quickly: lye of 33 %, common practice. */
const LEAST_WATER_TO_HYDROXIDE = 2

/** Step an addition is offered in where no scale is stated, g. */
const OFFER_STEP_G = 0.1

/**
 * The alkali missing, in mol: T·(1 − s) + acids − alkali, with s as asked; but no more than the leanest
 * lots take with the fine scale off twice, once for the alkali in the pot and once for this, and with this
 * as pure as it may be. Rounded down, the water up. Null where nothing is missing or no room is left.
 *
 * By hand: 3.744764 mol of fat at 5 % and 130 g of NaOH: 3.557526 − 130 / 39.997 = 0.307282 mol, 12.290 g.
 */
export function lyeTopUp(plan: ReadyPlan, reckoning: Reckoning): LyeTopUp | null {
  const { order, weights } = reckoning
  const mol = missingMol(plan, reckoning)
  if (!(mol > 0)) return null
  const alkaliGrams = gramsOfMol(mol, reckoning)
  const added = Object.values(alkaliGrams).reduce((g, one) => g + one, 0)
  if (added <= 0) return null
  const mended = { ...reckoning, weights: { ...weights, alkaliGrams: plus(weights, alkaliGrams) } }
  return {
    alkaliGrams,
    waterGrams: waterFor(plan, alkaliGrams),
    ...superfatsOf(mended, mended, twiceWeighed(order)),
  }
}

function missingMol(plan: ReadyPlan, reckoning: Reckoning): number {
  const { order } = reckoning
  const typical = endsOf(reckoning, 'typical', EXACT, 'all')
  const lean = endsOf(reckoning, 'low', twiceWeighed(order), 'all')
  const bound = typical.fatMol * (1 - fractionFromPercent(plan.superfat.askedPercent))
  const wanted = bound + typical.acidMol - typical.alkaliMol
  if (order.confirmedLean !== undefined) return wanted
  const room = lean.fatMol + lean.acidMol - lean.alkaliMol
  return Math.min(wanted, room / purer(reckoning, errorsOf(order)))
}

/** The errors of the scales where every alkali stands on the fine one twice. */
function twiceWeighed(order: Reckoning['order']) {
  const errors = errorsOf(order)
  return { ...errors, lyeG: 2 * errors.lyeG }
}

function gramsOfMol(mol: number, { order }: Reckoning): Partial<Record<AlkaliKind, number>> {
  const shares = alkaliShares(order)
  const step = order.scale?.lyeStepG ?? OFFER_STEP_G
  return Object.fromEntries(
    alkalisOf(order).map((kind) => {
      const exact = (mol * shares[kind] * ALKALI_MOLAR_MASS[kind]) / contentOf(order, kind)
      return [kind, roundedDown(exact, step)]
    }),
  )
}

function plus(
  weights: Reckoning['weights'],
  more: Readonly<Partial<Record<AlkaliKind, number>>>,
): Partial<Record<AlkaliKind, number>> {
  const kinds: readonly AlkaliKind[] = ['naoh', 'koh']
  return Object.fromEntries(
    kinds.flatMap((kind) => {
      const [before, added] = [weights.alkaliGrams[kind], more[kind]]
      return before === undefined && added === undefined
        ? []
        : [[kind, (before ?? 0) + (added ?? 0)]]
    }),
  )
}

/** Solid alkali is dissolved as thin as the batch's own lye, or thinner. */
function waterFor(
  { order, figures }: ReadyPlan,
  alkaliGrams: Readonly<Partial<Record<AlkaliKind, number>>>,
): number {
  const solid = alkalisOf(order)
    .filter((kind) => order.lyeSolution?.[kind] === undefined)
    .reduce((g, kind) => g + (alkaliGrams[kind] ?? 0), 0)
  const ratio = Math.max(figures.waterToHydroxide, LEAST_WATER_TO_HYDROXIDE)
  return roundedUp(solid * ratio, order.scale?.lyeStepG ?? OFFER_STEP_G)
}
