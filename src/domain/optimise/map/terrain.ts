import { statesRules } from '../brief/brief-rules'
import type { Interval } from '../../interval'
import { measureRange } from '../ranges/attainable-linear'
import { DEFAULT_TIME_MS, type SearchBudget } from '../search/allowance'
import type { BlendSpace } from '../space/blend-space'
import type { Axes } from './region'
import { type Terrain, terrainOver } from './terrain-linear'
import { type RuledTerrain, terrainUnderRules } from './terrain-ruled'

/** What to lay a terrain over. */
export interface TerrainOrder extends Pick<SearchBudget, 'timeMs'> {
  readonly axes: Axes
  /** The measure whose best is the height. */
  readonly value: string
  readonly columns: number
  readonly rows: number
}

/** A terrain under rules as it is told. */
export type ToldRuledTerrain =
  /** Every height is proved, or that there is none; and so is the region's edge on the grid. */
  | ({ readonly status: 'optimal' } & RuledTerrain)
  /** The gap is the largest of all heights, in the height's unit; so many points are not settled at all. */
  | ({
      readonly status: 'feasible'
      readonly gap: number
      readonly openPoints: number
    } & RuledTerrain)
  /** Time ran out before any blend was found. */
  | { readonly status: 'undecided' }

/** The best of a measure over a grid of two others; under rules with what is proved of it. */
export type TerrainAnswer = ({ readonly status: 'optimal' } & Terrain) | ToldRuledTerrain

/**
 * The terrain over all that the two axes can reach with the wishes on them set aside; undefined where
 * there is no blend. Under rules it has as many rows as columns, and its time is bounded.
 */
export function terrain(space: BlendSpace, order: TerrainOrder): TerrainAnswer | undefined {
  return statesRules(space.brief) ? ruledTerrain(space, order) : exactTerrain(space, order)
}

function exactTerrain(
  space: BlendSpace,
  { axes, value, columns, rows }: TerrainOrder,
): TerrainAnswer | undefined {
  for (const axis of axes) space.hold(axis, {})
  const [across, up] = [measureRange(space, axes[0]), measureRange(space, axes[1])]
  if (!across || !up) return undefined
  const found = terrainOver(space, axes, value, evenly(across, columns), evenly(up, rows))
  return { status: 'optimal', ...found }
}

function evenly({ min, max }: Interval, count: number): number[] {
  return Array.from({ length: count }, (_, i) => min + ((max - min) * i) / Math.max(1, count - 1))
}

function ruledTerrain(
  space: BlendSpace,
  { axes, value, columns, timeMs = DEFAULT_TIME_MS }: TerrainOrder,
): ToldRuledTerrain | undefined {
  const endMs = performance.now() + timeMs
  const shouldStop = () => performance.now() >= endMs
  const terrains = terrainUnderRules(space, axes, value, { sizes: [columns], shouldStop })
  let last: RuledTerrain | undefined
  let step = terrains.next()
  for (; !step.done; step = terrains.next()) last = step.value
  if (last) return told(last)
  return step.value === 'infeasible' ? undefined : { status: 'undecided' }
}

function told(found: RuledTerrain): ToldRuledTerrain {
  const states = found.states.flat()
  const isSettled =
    found.stage === 'complete' &&
    states.every((state) => state === 'exact' || state === 'none') &&
    found.ends.every(({ isExact }) => isExact)
  if (isSettled) return { status: 'optimal', ...found }
  return {
    status: 'feasible',
    gap: Math.max(0, ...found.gaps.flat().map((gap) => gap ?? 0)),
    openPoints: states.filter((state) => state === 'open').length,
    ...found,
  }
}
