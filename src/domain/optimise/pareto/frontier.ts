import type { Blend } from '../../blend/blend'
import type { Problem } from '../../blend/check-blend'
import { blendValues } from '../../blend/values'
import type { Progress } from '../../lp/pareto/grow'
import { pricesOf } from '../brief/brief'
import { statesRules } from '../brief/brief-rules'
import type { SearchBudget } from '../search/allowance'
import type { BlendSpace } from '../space/blend-space'
import { type Surface, type SurfaceAxis, surfaceOf } from './blend-surface'
import { frontierUnderRules, type RuledFrontier } from './front-ruled'

/** What to find of a trade-off surface. */
export interface FrontierOrder extends Pick<SearchBudget, 'timeMs'> {
  readonly axes: readonly SurfaceAxis[]
  readonly wholeHull: boolean
}

/** A trade-off surface as it is told: axes by name, and every measure of each corner. */
export interface Frontier extends Omit<
  Extract<Surface, { status: 'optimal' }>,
  'axes' | 'vertices'
> {
  readonly axes: readonly string[]
  readonly wanted: readonly ('more' | 'less')[]
  readonly vertices: readonly {
    readonly measures: Readonly<Record<string, number>>
    readonly blend: Blend
  }[]
}

/** A trade-off under rules as it is told: axes by name, and every measure of each end. */
export type ToldRuledFrontier =
  | ({
      readonly status: 'optimal' | 'feasible'
      readonly axes: readonly string[]
      readonly wanted: readonly ('more' | 'less')[]
    } & Omit<FoundFrontier, 'status' | 'axes'>)
  | Extract<RuledFrontier, { status: 'undecided' }>

type FoundFrontier = Extract<RuledFrontier, { axes: unknown }>

/** The Pareto front of a brief, or what is wrong with the order of it. */
export type FrontierAnswer =
  | Frontier
  | ToldRuledFrontier
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/**
 * The exact trade-off surface over two to four measures; under rules the front over two, within the
 * order's time. Undefined where there is no blend.
 */
export function frontier(
  space: BlendSpace,
  order: FrontierOrder,
  onProgress?: (progress: Progress) => void,
): FrontierAnswer | undefined {
  return statesRules(space.brief)
    ? ruledFrontier(space, order)
    : exactFrontier(space, order, onProgress)
}

function exactFrontier(
  space: BlendSpace,
  { axes, wholeHull }: FrontierOrder,
  onProgress?: (progress: Progress) => void,
): Frontier | undefined {
  const surface = surfaceOf(space, axes, { wholeHull, onProgress })
  return surface.status === 'optimal' ? told(space, surface) : undefined
}

function told(space: BlendSpace, surface: Extract<Surface, { status: 'optimal' }>): Frontier {
  const { axes, vertices, ...rest } = surface
  const prices = pricesOf(space.brief)
  return {
    ...rest,
    axes: axes.map(({ measure }) => measure),
    wanted: axes.map(({ wanted }) => wanted),
    vertices: vertices.map(({ blend }) => ({
      measures: blendValues(space.library, prices, blend),
      blend,
    })),
  }
}

function ruledFrontier(
  space: BlendSpace,
  order: FrontierOrder,
): Exclude<FrontierAnswer, Frontier> | undefined {
  const message = untraceable(order)
  if (message !== undefined) return { status: 'invalid', problems: [{ path: 'rules', message }] }
  const { axes, timeMs } = order
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

/** What is wrong with an order of a front under rules; undefined where it can be traced. */
function untraceable({ axes, wholeHull }: FrontierOrder): string | undefined {
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

function pairOf([first, second]: readonly SurfaceAxis[]): readonly [SurfaceAxis, SurfaceAxis] {
  if (first && second) return [first, second]
  throw new Error('A trade-off of fewer than two axes')
}
