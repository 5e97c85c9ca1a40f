import { oilOf } from '../../blend/library'
import type { AlkaliKind } from '../../chemistry/alkali'
import type { Basis } from '../../chemistry/fatty-acid'
import { alkalisOf } from '../order/order'
import { isCertified } from '../order/purity'
import type { Reckoning } from '../weigh/reckoning'

/** What a figure stands on, the surest first. */
export const MARKS = ['certificate', 'ownTest', 'read', 'recalled', 'assumed'] as const

export type Mark = (typeof MARKS)[number]

/** One figure that the lean end of the superfat stands on. */
export interface Standing {
  readonly what: 'oil' | 'alkali' | 'acid'
  /** Id of the oil, alkali or acid. */
  readonly id: string
  readonly mark: Mark
  /** An id of data/sources.json, or the certificate's own words. */
  readonly source: string
}

/** The mark of a figure of the library, or of an oil of one's own. */
export function markOf(basis: Basis): Mark {
  if (basis === 'certificate') return 'certificate'
  if (basis === 'published') return 'read'
  return basis === 'memory' ? 'recalled' : 'assumed'
}

/** What each figure at the lean end stands on: oils, then alkalis, then acids. */
export function standsOn({ order, weights, library, facts }: Reckoning): Standing[] {
  const oils = new Set([...Object.keys(weights.oilGrams), ...Object.keys(weights.extraFatGrams)])
  return [
    ...[...oils].map((id): Standing => {
      const lot = order.lots?.[id]
      const { saponificationValue, reacts } = oilOf(library, id)
      if (reacts) return { what: 'oil', id, mark: markOf(reacts.basis), source: reacts.source }
      if (lot?.saponificationValue !== undefined)
        return { what: 'oil', id, mark: 'certificate', source: certificateOf(lot) }
      // A low end that this project moved is no longer what was read.
      const basis = saponificationValue.printedLow === undefined ? saponificationValue.basis : null
      const mark = basis === null ? 'assumed' : markOf(basis)
      return { what: 'oil', id, mark, source: saponificationValue.source }
    }),
    ...alkalisOf(order).map((id) => alkaliStanding(order, id)),
    ...(order.acids ?? []).map(({ acid, certificate }): Standing => {
      if (certificate !== undefined)
        return { what: 'acid', id: acid, mark: 'certificate', source: certificate }
      return {
        what: 'acid',
        id: acid,
        mark: 'assumed',
        source: facts.acids.get(acid)?.source ?? '',
      }
    }),
  ]
}

function certificateOf({
  name,
  certificate,
}: {
  name?: string | undefined
  certificate?: string | undefined
}) {
  return [certificate, name].filter((one) => one !== undefined).join(', lot ')
}

function alkaliStanding(order: Reckoning['order'], id: AlkaliKind): Standing {
  const is = order.purityIs?.[id]
  if (isCertified(is)) return { what: 'alkali', id, mark: 'certificate', source: is.certificate }
  const pure = order.purity[id] === undefined && order.lyeSolution?.[id] === undefined
  if (pure)
    return { what: 'alkali', id, mark: 'read', source: 'taken as pure, which no bag exceeds' }
  if (is === 'exactly')
    return { what: 'alkali', id, mark: 'ownTest', source: 'titrated by the maker' }
  return { what: 'alkali', id, mark: 'assumed', source: 'the strongest that is sold' }
}

const MARK_WORDS: Readonly<Record<Mark, readonly [string, string]>> = {
  certificate: ['certificate', 'certificates'],
  ownTest: ['test of your own', 'tests of your own'],
  read: ['figure read', 'figures read'],
  recalled: ['figure recalled', 'figures recalled'],
  assumed: ['figure assumed', 'figures assumed'],
}

/** "The lean end stands on 1 certificate, 2 figures read and 1 figure assumed." */
export function standsOnSentence(standings: readonly Standing[]): string {
  const counted = MARKS.flatMap((mark) => {
    const count = standings.filter((one) => one.mark === mark).length
    const [one, many] = MARK_WORDS[mark]
    return count === 0 ? [] : [`${count} ${count === 1 ? one : many}`]
  })
  const last = counted.at(-1) ?? 'nothing'
  const list = counted.length > 1 ? `${counted.slice(0, -1).join(', ')} and ${last}` : last
  return `The lean end stands on ${list}.`
}
