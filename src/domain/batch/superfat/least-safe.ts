import { fractionFromPercent, percentFromFraction, WHOLE_PERCENT } from '../../units'
import { acidTakes, weighedAcids } from '../weigh/acid-weights'
import { fatEquivalents } from '../weigh/lots'
import { alkaliShares, alkalisOf } from '../order/order'
import { contentOf, contentUpTo } from '../order/purity'
import { endsOf, type Errors, lyeErrorMol } from './reach'
import type { Reckoning } from '../weigh/reckoning'
import { roundedUp } from '../weigh/rounding'

/** Step in which a safe superfat is offered, percent. */
const OFFER_STEP_PERCENT = 0.1

/**
 * The lye discount below which the leanest lots could leave free lye, in percent, rounded up to a tenth;
 * null where no discount is enough. From (1 − s)·T + A, the alkali a discount s asks for (A what paid
 * acids take), times K, how much purer it may be, plus the scale's error, being at most what the leanest
 * lots and the acids take: s = 1 − ((T_low + A_low − e)/K − A)/T.
 */
export function leastSafePercent(reckoning: Reckoning, errors: Errors): number | null {
  const { order, weights, library, facts } = reckoning
  const typicalMol = fatEquivalents(weights.oilGrams, library, 'typical', order)
  const { fatMol, acidMol } = endsOf(reckoning, 'low', errors, 'all')
  const paidMol = acidTakes(weighedAcids(order, weights.acidGrams, facts), 'paid')
  const taken = (fatMol + acidMol - lyeErrorMol(order, errors)) / purer(reckoning, errors)
  const percent = percentFromFraction(1 - (taken - paidMol) / typicalMol)
  if (!(percent < WHOLE_PERCENT)) return null
  return roundedUp(Math.max(0, percent), OFFER_STEP_PERCENT)
}

/** How many times as much hydroxide as reckoned may be in what is weighed (1 or more). */
export function purer({ order }: Reckoning, errors: Errors): number {
  if (!errors.contents) return 1
  const shares = alkaliShares(order)
  return alkalisOf(order).reduce(
    (sum, kind) => sum + (shares[kind] * contentUpTo(order, kind)) / contentOf(order, kind),
    0,
  )
}

/** A superfat asked as lye discount and extra fat together, percent: 1 − s = T·(1 − s_d) / (T + T_e). */
export function askedTogether(discountPercent: number, baseMol: number, extraMol: number): number {
  const bound = baseMol * (1 - fractionFromPercent(discountPercent))
  return percentFromFraction(1 - bound / (baseMol + extraMol))
}
