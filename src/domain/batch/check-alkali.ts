import {
  plain,
  problem,
  type Problem,
  SHARE_SUM_SLACK_PERCENT,
  shareProblem,
} from '../blend/check-blend'
import type { AlkaliKind } from '../chemistry/alkali'
import { fractionFromPercent, WHOLE_PERCENT } from '../units'
import { partPercent } from './check-numbers'
import { MOST_LYE_CONCENTRATION_PERCENT } from './dissolving'
import { alkalisOf, type BatchOrder } from './order'

/** No lye at room temperature holds more than this (a saturated one 52 %), percent. */
const MOST_SOLUTION_PERCENT = 55

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
    ...purityProblems(kind, order.purity[kind]),
    ...partPercent(`purityUpTo.${kind}`, order.purityUpTo?.[kind], 'highest purity'),
    ...solutionProblems(kind, order),
  ])
}

function alkaliSumMessage(total: number): string {
  return `The alkalis turn ${plain(total)} % of the fat to soap; their shares add to 100 %. Change them until they do.`
}

function purityProblems(kind: AlkaliKind, purity: number | undefined): Problem[] {
  if (purity === undefined || (purity > 0 && purity <= WHOLE_PERCENT)) return []
  const message = `The purity is ${purity} %. Give more than 0 and at most 100 %; the bag or its certificate states it.`
  return [problem(`purity.${kind}`, message)]
}

/**
 * A solution's strength is of pure hydroxide; with a purity beside it nobody could tell whether the one is
 * in the other already, and the difference is as large as a superfat.
 */
function solutionProblems(
  kind: AlkaliKind,
  { lyeSolution, purity, purityUpTo }: BatchOrder,
): Problem[] {
  const strength = lyeSolution?.[kind]
  if (strength === undefined) return []
  const path = `lyeSolution.${kind}`
  if (!(strength > 0 && strength <= MOST_LYE_CONCENTRATION_PERCENT))
    return [
      problem(
        path,
        `The lye solution is ${strength} %. Give more than 0 and at most ${MOST_LYE_CONCENTRATION_PERCENT} % pure hydroxide by weight.`,
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
