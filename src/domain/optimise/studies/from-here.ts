import { type Blend, normalised } from '../../blend/blend'
import { barMeasures } from '../../blend/compare'
import type { Library } from '../../blend/library'
import { blendValues } from '../../blend/values'
import { WHOLE_PERCENT } from '../../units'
import type { Brief, Limits, ShelfOil } from '../brief/brief'
import { brokenRules } from '../space/broken-rules'
import { INSIDE_PART } from './hold'

/** How far any oil may move when a bar is bettered from where it is, percentage points; the last is any. */
export const MOVES = [5, 10, 20, WHOLE_PERCENT] as const
export type Move = (typeof MOVES)[number]

/** A bar to better from where it is, and how far one may go. */
export interface FromHere {
  /** Percent of oil weight. */
  readonly base: Blend
  /** Oils of the bar that keep their share. */
  readonly locked: readonly string[]
  /** By how much any oil may move either way, percentage points; 100 is any. */
  readonly points: number
  /** The most that is usual of an oil, percent; an oil of the bar that has more keeps what it has. */
  readonly usualMost: (oil: string) => number
}

/**
 * The brief of all bars within reach of one: its oils and those of a shelf, none moved by more than stated,
 * locks kept, shares no higher than usual. Limits and rules of the shelf hold where the bar itself keeps them.
 * No measure is limited.
 */
export function reachBrief(brief: Brief, from: FromHere): Brief {
  const base = normalised(from.base)
  const ids = [...new Set([...Object.keys(base), ...Object.keys(brief.oils)])]
  const keepsRules = brokenRules(brief.rules, base).length === 0
  return {
    oils: Object.fromEntries(ids.map((oil) => [oil, aroundShare(oil, base, brief, from)])),
    groups: brief.groups.filter(({ oils, min = 0, max = WHOLE_PERCENT }) => {
      const share = oils.reduce((sum, oil) => sum + (base[oil] ?? 0), 0)
      return share >= min && share <= max
    }),
    measures: {},
    goal: { closestTo: base },
    ...(keepsRules && brief.rules && { rules: brief.rules }),
  }
}

function aroundShare(oil: string, base: Blend, { oils }: Brief, from: FromHere): ShelfOil {
  const share = base[oil] ?? 0
  const { pricePerKg, min = 0, max = WHOLE_PERCENT } = oils[oil] ?? { max: share }
  if (from.locked.includes(oil)) return { pricePerKg, min: share, max: share }
  const most = Math.min(max, share + from.points, from.usualMost(oil))
  return {
    pricePerKg,
    min: Math.min(share, Math.max(min, share - from.points, 0)),
    max: Math.max(share, Math.min(most, WHOLE_PERCENT)),
  }
}

/**
 * The same brief with every measure of the bar held against getting worse by what can be told: wishes of one
 * side, a tie under or over the bar's own.
 */
export function nothingWorse(reach: Brief, base: Blend, library: Library): Brief {
  const values = blendValues(library, {}, base)
  const measures = barMeasures(library.measures).map(({ id, tie, better }): [string, Limits] => {
    const value = values[id] ?? 0
    const inside = tie * (1 - INSIDE_PART)
    return [id, better === 'more' ? { min: value - inside } : { max: value + inside }]
  })
  return { ...reach, measures: Object.fromEntries(measures) }
}
