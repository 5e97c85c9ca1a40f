import {
  plain,
  problem,
  type Problem,
  SHARE_SUM_SLACK_PERCENT,
  shareProblem,
} from '../../blend/check-blend'
import { totalShare } from '../../blend/blend'
import { WHOLE_PERCENT } from '../../units'
import type { Certificate, Fragrance } from '../order/additions'
import { amountProblems, unknown } from './check-additions'
import { between, partPercent } from './check-numbers'
import type { BatchFacts } from '../order/facts'
import type { BatchOrder } from '../order/order'

/** Flash points of fragrances lie between these, °C. */
const FLASH_C = { least: 0, most: 250, unit: '°C' }

/** What is wrong with the fragrance of an order. */
export function fragranceProblems({ fragrance }: BatchOrder, facts: BatchFacts): Problem[] {
  if (!fragrance) return []
  const certificates = Object.entries(fragrance.certificates ?? {})
  return [
    ...amountProblems(fragrance, 'fragrance'),
    ...partProblems(fragrance, facts),
    ...certificates.flatMap(([id, one]) =>
      certificateProblems(one, `fragrance.certificates.${id}`),
    ),
  ]
}

function partProblems({ blend, certificates = {} }: Fragrance, facts: BatchFacts): Problem[] {
  const wrong = Object.entries(blend).flatMap(([id, share]) => {
    const path = `fragrance.blend.${id}`
    const listed = facts.scents.has(id) || certificates[id]?.allergens !== undefined
    return [
      ...(share >= 0 && share <= WHOLE_PERCENT ? [] : [shareProblem(path, share)]),
      ...(listed ? [] : [unlisted(path, id, facts)]),
    ]
  })
  if (wrong.length > 0) return wrong
  const total = totalShare(blend)
  if (Math.abs(total - WHOLE_PERCENT) <= SHARE_SUM_SLACK_PERCENT) return []
  return [
    problem(
      'fragrance.blend',
      `The parts add to ${plain(total)} %; a fragrance adds to 100 %. Change them until they do.`,
    ),
  ]
}

/** A fragrance whose allergens nobody knows can't stand on a label. */
function unlisted(path: string, id: string, facts: BatchFacts): Problem {
  const { message } = unknown(path, id, facts.scents)
  return problem(
    path,
    `${message} For another, give its supplier's allergens in fragrance.certificates.`,
  )
}

function certificateProblems(certificate: Certificate, path: string): Problem[] {
  return [
    ...(certificate.allergens ?? []).flatMap(({ allergen, lowPercent, highPercent }, i) => {
      const at = `${path}.allergens[${i}]`
      const sound = lowPercent >= 0 && highPercent >= lowPercent && highPercent <= WHOLE_PERCENT
      return sound
        ? []
        : [
            problem(
              at,
              `${allergen} is given as ${lowPercent} to ${highPercent} %. Give 0 to 100 %, the low one first.`,
            ),
          ]
    }),
    ...partPercent(`${path}.ifraMostPercent`, certificate.ifraMostPercent, 'limit'),
    ...between(`${path}.flashC`, certificate.flashC, FLASH_C),
  ]
}
