import type { Library } from '../../blend/library'
import { Simplex } from '../../lp/simplex/simplex'
import { WHOLE_PERCENT } from '../../units'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { type Limit, withLimit } from '../brief/limits'
import { bestBlend } from '../search/best-blend'
import { solveWithOwn } from '../../lp/solvers/own'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { elasticRow, unitsPer, wholeRow } from './elastic'
import { placesOf } from '../space/limit-place'
import { marksBeyond } from './marks'
import type { WayOut } from './way-out'

/**
 * Moves all limits of a conflict by the same number of units (see `unitsPer`: ties of a measure,
 * percentage points of a share), the least that lets a blend be found while every other limit is kept.
 * Undefined where no such number does. Expects a sound brief without a blend; the rules are kept.
 */
export function sharedLoss(
  brief: Brief,
  conflict: readonly string[],
  library: Library,
): WayOut | undefined {
  const space = new BlendSpace(brief, library)
  const shared = placesOf(space)
    .map(({ limit }) => limit)
    .filter(({ path }) => conflict.includes(path))
  const units = leastUnits(space, conflict)
  if (shared.length === 0 || units === undefined) return undefined
  const marks = shared.map((limit) => marksBeyond(moved(space, limit, units), limit))
  for (let k = 0; k < Math.max(...marks.map((one) => one.length)); k++) {
    const changes = shared.map((limit, n) => ({
      limit: limit.path,
      from: limit.value,
      to: marks[n]?.[k] ?? marks[n]?.at(-1) ?? NaN,
    }))
    const eased = shared.reduce((kept, limit, n) => withLimit(kept, limit, changes[n]?.to), brief)
    const found = bestBlend(eased, library, solveWithOwn)
    if (found) return { changes, found }
  }
  return undefined
}

/** The least number of units by which all these limits must give way together. */
function leastUnits(space: BlendSpace, conflict: readonly string[]): number | undefined {
  const oils = space.oils.length
  const give = oils
  const simplex = new Simplex({
    cost: [...new Array<number>(oils).fill(0), 1],
    lower: new Float64Array(oils + 1),
    upper: [...new Array<number>(oils).fill(WHOLE_PERCENT), Infinity],
    rows: [
      wholeRow(space, 1),
      ...placesOf(space).map((place) => {
        const perUnit = conflict.includes(place.limit.path) ? 1 / unitsPer(space, place.limit) : 0
        return elasticRow(place, give, oils + 1, perUnit)
      }),
    ],
  })
  const outcome = simplex.solve()
  if (outcome.status === 'unbounded')
    throw new UnsoundAnswer('Units that are at least none were called unbounded')
  return outcome.status === 'infeasible' ? undefined : outcome.objective
}

function moved(space: BlendSpace, limit: Limit, units: number): number {
  const by = units / unitsPer(space, limit)
  return limit.value + (limit.side === 'min' ? -by : by)
}
