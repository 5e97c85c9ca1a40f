import type { Library } from '../../blend/library'
import { BlendSpace, negated } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { withLimit } from '../brief/limits'
import { bestBlend } from '../search/best-blend'
import type { Found } from '../brief/answer'
import { solveWithOwn } from '../../lp/solvers/own'
import { type LimitPlace, placesOf, setBounds } from '../space/limit-place'
import { marksBeyond } from './marks'

/** One change to one limit that lets a blend be found with every other limit kept. */
export interface SingleChange {
  readonly limit: string
  readonly from: number
  /** The nearest value that works, rounded to the side that works. */
  readonly to: number
  readonly found: Found
}

/**
 * For each limit of a conflict the least change of it alone that frees the brief, with the best blend
 * that it opens; limits for which no value would do are left out. Expects a sound brief
 * without a blend; rules on which oils are used are kept.
 */
export function singleChanges(
  brief: Brief,
  conflict: readonly string[],
  library: Library,
): SingleChange[] {
  const space = new BlendSpace(brief, library)
  return placesOf(space)
    .filter(({ limit }) => conflict.includes(limit.path))
    .flatMap((place) => {
      const nearest = nearestValue(space, place)
      return nearest === undefined ? [] : firstThatWorks(brief, place, nearest, library)
    })
}

function firstThatWorks(
  brief: Brief,
  { limit }: LimitPlace,
  nearest: number,
  library: Library,
): SingleChange[] {
  for (const to of marksBeyond(nearest, limit)) {
    const found = bestBlend(withLimit(brief, limit, to), library, solveWithOwn)
    if (found) return [{ limit: limit.path, from: limit.value, to, found }]
  }
  return []
}

/** The value nearest to the limit that the rest of the brief can reach; undefined where there is none. */
function nearestValue(space: BlendSpace, place: LimitPlace): number | undefined {
  const { limit, owner, stated, open } = place
  const down = limit.side === 'min'
  const perPercent = Float64Array.from(place.perPercent)
  setBounds(
    space,
    owner,
    down ? { ...stated, lower: open.lower } : { ...stated, upper: open.upper },
  )
  const best = space.least(down ? negated(perPercent) : perPercent)
  const value = best && (down ? -best.objective : best.objective)
  setBounds(space, owner, stated)
  return value
}
