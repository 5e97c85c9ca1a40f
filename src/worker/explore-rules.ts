import { blendValues } from '../domain/blend/values'
import type { AlternativesOrder } from '../domain/optimise/alternatives/alternatives-linear'
import type { BlendSpace } from '../domain/optimise/space/blend-space'
import { pricesOf } from '../domain/optimise/brief/brief'
import {
  alternativesUnderRules,
  type RuledAlternatives,
} from '../domain/optimise/alternatives/alternatives-ruled'
import {
  attainableUnderRules,
  type RuledAttainable,
} from '../domain/optimise/ranges/attainable-ruled'
import { DEFAULT_TIME_MS } from '../domain/optimise/search/allowance'
import { frontierUnderRules } from '../domain/optimise/pareto/front-ruled'
import { type RuledTerrain, terrainUnderRules } from '../domain/optimise/map/terrain-ruled'
import type { SurfaceAxis } from '../domain/optimise/pareto/blend-surface'
import type {
  FrontierOrder,
  TerrainOrder,
  TimeLimit,
  Told,
  ToldRuledFrontier,
  ToldRuledTerrain,
} from './protocol'

/*
 * The questions of `explore` about briefs with rules. Each is undefined where there is proved to be no
 * blend, and the limits of a robust brief hold for any lot in all of them.
 */

export function ruledRangeIn(
  space: BlendSpace,
  limit: TimeLimit,
): Told<RuledAttainable> | undefined {
  return unlessNone(attainableUnderRules(space, limit))
}

/** What is wrong with an order of a frontier under rules; undefined where it can be traced. */
export function untraceable({ axes, wholeHull }: FrontierOrder): string | undefined {
  if (axes.length > 2)
    return (
      'The brief states rules on whole blends, under which a trade-off is traced for 2 measures; ' +
      `${axes.length} are named. Name 2 of them, or take the rules out of the brief.`
    )
  if (wholeHull)
    return (
      'The brief states rules on whole blends, under which what can be reached need not be convex, so a ' +
      'hull would enclose what no blend reaches. Ask without the hull, or lay a terrain over both measures.'
    )
  return undefined
}

export function ruledFrontierIn(
  space: BlendSpace,
  { axes, timeMs }: FrontierOrder,
): ToldRuledFrontier | undefined {
  const found = frontierUnderRules(space, pairOf(axes), { timeMs })
  if (found.status === 'infeasible') return undefined
  if (found.status === 'undecided') return found
  const prices = pricesOf(space.brief)
  return {
    ...found,
    axes: axes.map(({ measure }) => measure),
    wanted: axes.map(({ wanted }) => wanted),
    vertices: found.vertices.map((vertex) => ({
      ...vertex,
      measures: blendValues(space.library, prices, vertex.blend),
    })),
  }
}

function pairOf([first, second]: readonly SurfaceAxis[]): readonly [SurfaceAxis, SurfaceAxis] {
  if (first && second) return [first, second]
  throw new Error('A trade-off of fewer than two axes')
}

export function ruledTerrainIn(
  space: BlendSpace,
  { axes, value, columns, timeMs = DEFAULT_TIME_MS }: TerrainOrder,
): ToldRuledTerrain | undefined {
  const endMs = performance.now() + timeMs
  const shouldStop = () => performance.now() >= endMs
  const terrains = terrainUnderRules(space, axes, value, { sizes: [columns], shouldStop })
  let last: RuledTerrain | undefined
  let step = terrains.next()
  for (; !step.done; step = terrains.next()) last = step.value
  if (last) return toldTerrain(last)
  return step.value === 'infeasible' ? undefined : { status: 'undecided' }
}

function toldTerrain(terrain: RuledTerrain): ToldRuledTerrain {
  const states = terrain.states.flat()
  const isSettled =
    terrain.stage === 'complete' &&
    states.every((state) => state === 'exact' || state === 'none') &&
    terrain.ends.every(({ isExact }) => isExact)
  if (isSettled) return { status: 'optimal', ...terrain }
  return {
    status: 'feasible',
    gap: Math.max(0, ...terrain.gaps.flat().map((gap) => gap ?? 0)),
    openPoints: states.filter((state) => state === 'open').length,
    ...terrain,
  }
}

export function ruledAlternativesIn(
  space: BlendSpace,
  { timeMs, ...order }: AlternativesOrder & TimeLimit,
): Told<RuledAlternatives> | undefined {
  return unlessNone(alternativesUnderRules(space, order, { timeMs }))
}

function unlessNone<T extends { readonly status: string }>(answer: T): Told<T> | undefined {
  return hasAnswer(answer) ? answer : undefined
}

function hasAnswer<T extends { readonly status: string }>(answer: T): answer is Told<T> {
  return answer.status !== 'infeasible'
}
