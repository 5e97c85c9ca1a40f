import {
  plain,
  problem,
  type Problem,
  SHARE_SUM_SLACK_PERCENT,
  shareProblem,
} from '../../blend/check-blend'
import { ALKALI_NAMES, type AlkaliKind } from '../../chemistry/alkali'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { between, fractionSlip, partPercent } from './check-numbers'
import { isPaperNumber } from '../../blend/paper-number'
import { paperNumberMessage } from './check-words'
import { MOST_LYE_CONCENTRATION_PERCENT } from '../order/dissolving'
import { alkalisOf, type BatchOrder } from '../order/order'
import { isCertified, LEAST_PURITY_PERCENT, PLAUSIBLE_PURITY_PERCENT } from '../order/purity'

/** No lye at room temperature holds more than this (a saturated one 52 %), percent. */
const MOST_SOLUTION_PERCENT = 55

/** Solutions are sold with 25 to 50 % (common practice); weaker ones need a certificate, and this much. */
const LEAST_SOLUTION_PERCENT = 20
const LEAST_CERTIFIED_PERCENT = 5

const KINDS: readonly AlkaliKind[] = ['naoh', 'koh']

/** What is wrong with the alkalis of an order and what they are weighed as. */
export function alkaliProblems(order: BatchOrder): Problem[] {
  const wrong = KINDS.flatMap((kind) => {
    const share = order.alkali[kind]
    if (share === undefined || (share >= 0 && share <= WHOLE_PERCENT)) return []
    return [shareProblem(`alkali.${kind}`, share)]
  })
  if (wrong.length > 0) return wrong
  const total = (order.alkali.naoh ?? 0) + (order.alkali.koh ?? 0)
  if (Math.abs(total - WHOLE_PERCENT) > SHARE_SUM_SLACK_PERCENT)
    return [problem('alkali', alkaliSumMessage(total))]
  return alkalisOf(order).flatMap((kind) => [
    ...purityProblems(kind, order),
    ...upToProblems(kind, order),
    ...certificateProblems(kind, order),
    ...solutionProblems(kind, order),
  ])
}

function alkaliSumMessage(total: number): string {
  return `The alkalis turn ${plain(total)} % of the fat to soap; their shares add to 100 %. Change them until they do.`
}

/** A purity no bag of this alkali has, unless a certificate says so; a fraction is named as such. */
function purityProblems(kind: AlkaliKind, { purity, purityIs }: BatchOrder): Problem[] {
  const value = purity[kind]
  const path = `purity.${kind}`
  // 100 says "taken as pure", as leaving it out does, and errs towards more fat.
  if (value === undefined || value === WHOLE_PERCENT) return []
  const slip = fractionSlip(path, value, 'purity')
  if (slip.length > 0) return slip
  const least = LEAST_PURITY_PERCENT
  if (!(value >= least && value < WHOLE_PERCENT))
    return [
      problem(
        path,
        `The purity is ${value} %. Give ${least} to 100 %; the bag or its certificate states it. Less than ${least} % is no dry alkali: a solution goes under lyeSolution.`,
      ),
    ]
  const { min, max } = PLAUSIBLE_PURITY_PERCENT[kind]
  if ((value >= min && value <= max) || isCertified(purityIs?.[kind])) return []
  return [
    problem(
      path,
      `The purity is ${value} %, and ${ALKALI_NAMES[kind]} is sold with ${min} to ${max} %. Look at the bag again, or give the number of this lot's certificate in purityIs.${kind}.`,
    ),
  ]
}

function upToProblems(kind: AlkaliKind, { purityUpTo }: BatchOrder): Problem[] {
  const path = `purityUpTo.${kind}`
  const slip = fractionSlip(path, purityUpTo?.[kind], 'highest purity')
  return slip.length > 0 ? slip : partPercent(path, purityUpTo?.[kind], 'highest purity')
}

/** Most that a certificate of purity may be off, points of percent: more is no certificate. */
const MOST_WITHIN_PERCENT = 5

function certificateProblems(
  kind: AlkaliKind,
  { purity, purityIs, lyeSolution }: BatchOrder,
): Problem[] {
  const is = purityIs?.[kind]
  if (!isCertified(is)) return []
  const path = `purityIs.${kind}`
  const figure = purity[kind] ?? lyeSolution?.[kind]
  return [
    ...(isPaperNumber(is.certificate)
      ? []
      : [problem(`${path}.certificate`, paperNumberMessage(is.certificate))]),
    ...between(`${path}.within`, is.within, { least: 0, most: MOST_WITHIN_PERCENT, unit: '%' }),
    ...(figure === undefined
      ? [problem(path, `A certificate needs the figure that it states. Give purity.${kind}.`)]
      : []),
  ]
}

/**
 * A solution's strength is of pure hydroxide; with a purity beside it nobody could tell whether the one is
 * in the other already, and the difference is as large as a superfat.
 */
function solutionProblems(
  kind: AlkaliKind,
  { lyeSolution, purity, purityIs, purityUpTo }: BatchOrder,
): Problem[] {
  const strength = lyeSolution?.[kind]
  if (strength === undefined) return []
  const path = `lyeSolution.${kind}`
  const slip = fractionSlip(path, strength, 'lye solution')
  if (slip.length > 0) return slip
  if (!(strength > 0 && strength <= MOST_LYE_CONCENTRATION_PERCENT))
    return [
      problem(
        path,
        `The lye solution is ${strength} %. Give more than 0 and at most ${MOST_LYE_CONCENTRATION_PERCENT} % pure hydroxide by weight.`,
      ),
    ]
  if (
    strength < LEAST_SOLUTION_PERCENT &&
    !(isCertified(purityIs?.[kind]) && strength >= LEAST_CERTIFIED_PERCENT)
  )
    return [
      problem(
        path,
        `The lye solution is ${strength} %, and solutions are sold with ${LEAST_SOLUTION_PERCENT} to ${MOST_LYE_CONCENTRATION_PERCENT} %. A weaker one asks for far more of it: look at its label again, or give the number of its certificate in purityIs.${kind}.`,
      ),
    ]
  const most = purityUpTo?.[kind]
  if (most !== undefined && most > MOST_SOLUTION_PERCENT)
    return [
      problem(
        `purityUpTo.${kind}`,
        `The alkali comes as a solution of ${strength} %, so this is the most that the solution may hold, and it is ${most} %. Give at most ${MOST_SOLUTION_PERCENT} %.`,
      ),
    ]
  const flakes = purity[kind]
  if (flakes === undefined) return []
  const pure = plain(strength * fractionFromPercent(flakes))
  return [
    problem(
      path,
      `A lye solution is given in percent of pure hydroxide, so ${kind} needs no purity. If ${strength} % are flakes of ${flakes} %, give ${pure} % and take purity.${kind} out.`,
    ),
  ]
}
