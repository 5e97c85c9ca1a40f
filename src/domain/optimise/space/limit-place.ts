import type { Bounds } from '../../lp/program'
import type { BoundOwner } from '../../lp/simplex/simplex'
import { WHOLE_PERCENT } from '../../units'
import type { BlendSpace } from './blend-space'
import { type Limit, limitsOf } from '../brief/limits'

/** Where a limit of a brief stands in the simplex of its space. */
export interface LimitPlace {
  readonly limit: Limit
  readonly owner: BoundOwner
  /** What one percent of each oil adds to the limited quantity, in the limit's unit. */
  readonly perPercent: ArrayLike<number>
  /** The owner's range as the brief states it. */
  readonly stated: Bounds
  /** The same range without any wish: 0 to 100 % for an oil, without ends for a row. */
  readonly open: Bounds
  /** What the limited quantity can be in any mix of the shelf, whatever the limits. */
  readonly shelf: Bounds
}

const SHARE: Bounds = { lower: 0, upper: WHOLE_PERCENT }
const NO_BOUNDS: Bounds = { lower: -Infinity, upper: Infinity }

/** The places of all limits that a brief states: oils first, then groups, then measures. */
export function placesOf(space: BlendSpace): LimitPlace[] {
  return limitsOf(space.brief).map((limit) => placeOf(space, limit))
}

/** The place of the limit with this path; throws where the brief states no such limit. */
export function placeAt(space: BlendSpace, path: string): LimitPlace {
  const limit = limitsOf(space.brief).find((one) => one.path === path)
  if (!limit) throw new Error(`The brief states no limit ${path}`)
  return placeOf(space, limit)
}

/** Sets the range of an oil's share or of a row of a space. */
export function setBounds(space: BlendSpace, { kind, index }: BoundOwner, bounds: Bounds): void {
  if (kind === 'variable') space.simplex.setVariableBounds(index, bounds.lower, bounds.upper)
  else space.simplex.setRowBounds(index, bounds.lower, bounds.upper)
}

/** What the limited quantity comes to for shares in percent, in the limit's unit. */
export function quantityOf({ perPercent }: LimitPlace, shares: ArrayLike<number>): number {
  return Array.from(perPercent).reduce((sum, one, oil) => sum + one * (shares[oil] ?? NaN), 0)
}

function placeOf(space: BlendSpace, limit: Limit): LimitPlace {
  return limit.kind === 'oil' ? oilPlace(space, limit) : rowPlace(space, limit)
}

function oilPlace({ oils, program }: BlendSpace, limit: Limit): LimitPlace {
  const index = oils.indexOf(limit.subject)
  return {
    limit,
    owner: { kind: 'variable', index },
    perPercent: Float64Array.from(oils, (oil) => Number(oil === limit.subject)),
    stated: { lower: program.lower[index] ?? NaN, upper: program.upper[index] ?? NaN },
    open: SHARE,
    shelf: SHARE,
  }
}

function rowPlace(space: BlendSpace, limit: Limit): LimitPlace {
  const index = rowOf(space, limit)
  const row = space.program.rows[index]
  if (!row) throw new Error(`The limit ${limit.path} has no row`)
  return {
    limit,
    owner: { kind: 'row', index },
    perPercent: row.coefficients,
    stated: { lower: row.lower, upper: row.upper },
    open: NO_BOUNDS,
    shelf: limit.kind === 'group' ? SHARE : valuesOf(row.coefficients),
  }
}

function rowOf(space: BlendSpace, { kind, subject, side }: Limit): number {
  return kind === 'measure' ? space.wishRowOf(subject, side) : space.groupRowOf(Number(subject))
}

/** Least and most value of a whole blend of one oil, in the row's unit. */
function valuesOf(perPercent: ArrayLike<number>): Bounds {
  const values = Array.from(perPercent, (value) => value * WHOLE_PERCENT)
  return { lower: Math.min(...values), upper: Math.max(...values) }
}
