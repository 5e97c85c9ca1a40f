import type { BlendSpace } from '../space/blend-space'
import { type Alternative, checkedAlternative } from './checked'
import { changeToNearest, mostDistinct } from './distinct'
import { type NearOptimal, nearOptimal } from './near-optimal'
import { cornerPool } from './pool-linear'
import type { Slack } from './slack'

/** What to look for. */
export interface AlternativesOrder {
  readonly slack: Slack
  /** How many blends, the best among them; 1 or more. */
  readonly count: number
  /** A whole number; the same seed gives the same blends. */
  readonly seed: number
  /** Corners in random directions to choose from; left out means DEFAULT_POOL, or six for each blend. */
  readonly pool?: number | undefined
}

/** Blends within the slack, the best first, then each the most different from those before it. */
export type Alternatives =
  | {
      readonly status: 'optimal'
      readonly alternatives: readonly Alternative[]
      /** The worst goal that was within the slack, in the goal's unit. */
      readonly goalLimit: number
      /** The smallest total change between any two, in percentage points; undefined for a single one. */
      readonly leastChange: number | undefined
      /** Why there are fewer than asked for; undefined where there are not. */
      readonly shortage: string | undefined
    }
  | { readonly status: 'infeasible' }

/**
 * Two blends are different recipes from a total change of so many percentage points on: one point is
 * half a percent of one oil for half a percent of another, the finest step that makers write.
 */
export const DISTINCT_PERCENT = 1

/**
 * Corners in random directions. More make the choice better, but slowly: of 50 oils with 7 measures in
 * ranges, 3 groups and 3 % slack, eight blends changed by at least 36.7 percentage points from a pool of
 * 24, 40.4 from 48, 41.6 from 64, 42.6 from 100, 43.4 from 200, 45.9 from 1,000 (mean of 60 random
 * briefs). A corner takes 8 to 10 microseconds.
 */
export const DEFAULT_POOL = 48
/** The same for each blend asked for, so that many have a choice as well. */
const POOL_PER_BLEND = 6

/** Blends that are mixed by twos at most: of more, the pairs would be too many to look at. */
const MOST_MIXED = 32

/**
 * Blends within a slack of the best that differ as much as possible from one another, in composition:
 * the smallest total change between any two is made large. Measures do not count towards the
 * difference, as they follow from the composition and other oils for the same bar are what is asked.
 *
 * They are chosen from a pool of corners (`cornerPool`) by `mostDistinct`, so the smallest change is at
 * least half of the best that the pool allows. Where corners run out, mixtures of two chosen blends
 * half and half, which are within the slack as well, fill up. Every blend is checked against the brief
 * and the slack from the oils alone. Deterministic for a seed. Expects the shares and groups of the
 * space to be limited as its brief says; puts its measures back. Throws UnsoundAnswer like every solve.
 */
export function alternativesTo(space: BlendSpace, order: AlternativesOrder): Alternatives {
  const { slack, count, seed } = order
  const pool = order.pool ?? Math.max(DEFAULT_POOL, POOL_PER_BLEND * count)
  requireCount('count', count, 1)
  requireCount('pool', pool, 0)
  const near = nearOptimal(space, slack)
  if (!near) return { status: 'infeasible' }
  try {
    const found = distinctBlends(near, count > 1 ? cornerPool(near, pool, seed) : [], count)
    return told(space, near, found, count)
  } finally {
    near.close()
  }
}

function requireCount(what: string, value: number, least: number): void {
  if (Number.isInteger(value) && value >= least) return
  throw new RangeError(`The ${what} is ${value}. Give a whole number of ${least} or more.`)
}

function distinctBlends(
  { best }: NearOptimal,
  pool: readonly Float64Array[],
  count: number,
): Float64Array[] {
  let found = mostDistinct([best], pool, count, DISTINCT_PERCENT)
  for (let before = 0; found.length < count && found.length > before;) {
    before = found.length
    const mixtures = halfAndHalf(found.slice(0, MOST_MIXED))
    found = mostDistinct(found, mixtures, count, DISTINCT_PERCENT)
  }
  return found
}

/** The mixtures of any two of some blends, half and half. */
function halfAndHalf(blends: readonly Float64Array[]): Float64Array[] {
  return blends.flatMap((one, place) =>
    blends
      .slice(place + 1)
      .map((other) => one.map((share, oil) => (share + (other[oil] ?? NaN)) / 2)),
  )
}

function told(
  space: BlendSpace,
  near: NearOptimal,
  found: readonly Float64Array[],
  count: number,
): Alternatives {
  const leastChange = Math.min(
    ...found.map((one, place) => changeToNearest(one, found.slice(0, place))),
  )
  const slack = Math.abs(near.limit - near.bestValue)
  const best = { shares: near.best, value: near.bestValue, slack, isProved: true }
  return {
    status: 'optimal',
    alternatives: found.map((shares) => {
      return checkedAlternative(space.check, best, shares, space.prices)
    }),
    goalLimit: near.limit,
    leastChange: leastChange === Infinity ? undefined : leastChange,
    shortage: found.length < count ? shortageOf(found.length, count) : undefined,
  }
}

function shortageOf(found: number, count: number): string {
  return (
    `There are ${found} of ${count}: no other blend looked at within the slack changes by ` +
    `${DISTINCT_PERCENT} percentage point or more from each of these. Allow more slack for more.`
  )
}
