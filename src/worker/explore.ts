import type { Library } from '../domain/blend/library'
import { blendValues } from '../domain/blend/values'
import { alternativesTo } from '../domain/optimise/alternatives/alternatives-linear'
import { askSpace } from '../domain/optimise/solve/ask-space'
import { attainableRanges, measureRange } from '../domain/optimise/ranges/attainable-linear'
import type { BlendSpace } from '../domain/optimise/space/blend-space'
import { type Brief, pricesOf } from '../domain/optimise/brief/brief'
import { reasonsFor } from '../domain/optimise/why/reasons'
import type { Range } from '../domain/optimise/brief/ranges'
import { statesRules } from '../domain/optimise/brief/brief-rules'
import type { Progress } from '../domain/lp/pareto/grow'
import { type Surface, surfaceOf } from '../domain/optimise/pareto/blend-surface'
import { terrainOver } from '../domain/optimise/map/terrain-linear'
import { whyBest } from '../domain/optimise/why/why'
import {
  ruledAlternativesIn,
  ruledFrontierIn,
  ruledRangeIn,
  ruledTerrainIn,
  untraceable,
} from './explore-rules'
import type {
  ExploringService,
  Frontier,
  FrontierOrder,
  OrNone,
  TerrainOrder,
  ToldRuledFrontier,
} from './protocol'

/** Answers to questions about all that a brief allows. */
export function createExploring(library: Library): ExploringService {
  return {
    range: (brief, limit = {}) =>
      now(
        statesRules(brief)
          ? askSpace(brief, library, (space) => ruledRangeIn(space, limit), limit)
          : askSpace(brief, library, rangeIn),
      ),
    frontier: (brief, order, onProgress) => now(frontierOf(brief, library, order, onProgress)),
    reasons: (brief, found) => now(reasonsFor(brief, library, { blend: found.blend })),
    why: (brief, found) => now(whyBest(brief, found, library)),
    terrain: (brief, order) =>
      now(
        statesRules(brief)
          ? askSpace(brief, library, (space) => ruledTerrainIn(space, order), order)
          : askSpace(brief, library, (space) => terrainIn(space, order)),
      ),
    alternatives: (brief, order) =>
      now(
        statesRules(brief)
          ? askSpace(brief, library, (space) => ruledAlternativesIn(space, order), order)
          : askSpace(brief, library, (space) => {
              const found = alternativesTo(space, order)
              return found.status === 'optimal' ? found : undefined
            }),
      ),
  }
}

function frontierOf(
  brief: Brief,
  library: Library,
  order: FrontierOrder,
  onProgress?: (progress: Progress) => void,
): OrNone<Frontier | ToldRuledFrontier> {
  if (statesRules(brief)) {
    const message = untraceable(order)
    if (message !== undefined) return { status: 'invalid', problems: [{ path: 'rules', message }] }
    return askSpace(brief, library, (space) => ruledFrontierIn(space, order), order)
  }
  const { axes, wholeHull } = order
  return askSpace(brief, library, (space) => {
    const surface = surfaceOf(space, axes, { wholeHull, onProgress })
    return surface.status === 'optimal' ? frontierIn(space, surface) : undefined
  })
}

/** An answer as the promise that a thread gives; what goes wrong rejects it. */
function now<T>(answer: T): Promise<T> {
  return Promise.resolve(answer)
}

/** A surface with every measure of its corners, and its axes by name. */
function frontierIn(space: BlendSpace, surface: Extract<Surface, { status: 'optimal' }>): Frontier {
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

function rangeIn(space: BlendSpace) {
  const ranges = attainableRanges(space)
  return ranges && { status: 'optimal' as const, ...ranges }
}

/** The terrain over all that the two axes can reach with the wishes on them set aside. */
function terrainIn(space: BlendSpace, { axes, value, columns, rows }: TerrainOrder) {
  for (const axis of axes) space.hold(axis, {})
  const [across, up] = [measureRange(space, axes[0]), measureRange(space, axes[1])]
  if (!across || !up) return undefined
  const terrain = terrainOver(space, axes, value, evenly(across, columns), evenly(up, rows))
  return { status: 'optimal' as const, ...terrain }
}

function evenly({ min, max }: Range, count: number): number[] {
  return Array.from({ length: count }, (_, i) => min + ((max - min) * i) / Math.max(1, count - 1))
}
