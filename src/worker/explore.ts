import type { Library } from '../domain/blend/library'
import { blendValues } from '../domain/blend/values'
import { alternativesTo } from '../domain/optimise/alternatives'
import { askSpace } from '../domain/optimise/ask-space'
import { attainableRanges, measureRange } from '../domain/optimise/attainable'
import type { BlendSpace } from '../domain/optimise/blend-space'
import { pricesOf } from '../domain/optimise/brief'
import { reasonsFor } from '../domain/optimise/reasons'
import type { Range } from '../domain/optimise/ranges'
import { type Surface, surfaceOf } from '../domain/optimise/surface'
import { terrainOver } from '../domain/optimise/terrain'
import { whyBest } from '../domain/optimise/why'
import type { ExploringService, Frontier, TerrainOrder } from './protocol'

/** Answers to questions about all that a brief allows. */
export function createExploring(library: Library): ExploringService {
  return {
    range: (brief) => now(askSpace(brief, library, rangeIn)),
    frontier: (brief, { axes, wholeHull }, onProgress) =>
      now(
        askSpace(brief, library, (space) => {
          const surface = surfaceOf(space, axes, { wholeHull, onProgress })
          return surface.status === 'optimal' ? frontierIn(space, surface) : undefined
        }),
      ),
    reasons: (brief, found) => now(reasonsFor(brief, library, { blend: found.blend })),
    why: (brief, found) => now(whyBest(brief, found, library)),
    terrain: (brief, order) => now(askSpace(brief, library, (space) => terrainIn(space, order))),
    alternatives: (brief, order) =>
      now(
        askSpace(brief, library, (space) => {
          const found = alternativesTo(space, order)
          return found.status === 'optimal' ? found : undefined
        }),
      ),
  }
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
