import type { Library } from '../domain/blend/library'
import { alternatives } from '../domain/optimise/alternatives/alternatives'
import { terrain } from '../domain/optimise/map/terrain'
import { frontier } from '../domain/optimise/pareto/frontier'
import { attainable } from '../domain/optimise/ranges/attainable'
import { askSpace } from '../domain/optimise/solve/ask-space'
import { reasonsFor } from '../domain/optimise/why/reasons'
import { whyBest } from '../domain/optimise/why/why'
import type { ExploringService } from './protocol'

/** Answers to questions about all that a brief allows. */
export function createExploring(library: Library): ExploringService {
  return {
    range: (brief, limit = {}) =>
      now(askSpace(brief, library, (space) => attainable(space, limit), limit)),
    frontier: (brief, order, onProgress) =>
      now(askSpace(brief, library, (space) => frontier(space, order, onProgress), order)),
    reasons: (brief, found) => now(reasonsFor(brief, library, { blend: found.blend })),
    why: (brief, found) => now(whyBest(brief, found, library)),
    terrain: (brief, order) =>
      now(askSpace(brief, library, (space) => terrain(space, order), order)),
    alternatives: (brief, { timeMs, ...order }) =>
      now(askSpace(brief, library, (space) => alternatives(space, order, { timeMs }), { timeMs })),
  }
}

/** An answer as the promise that a thread gives; what goes wrong rejects it. */
function now<T>(answer: T): Promise<T> {
  return Promise.resolve(answer)
}
