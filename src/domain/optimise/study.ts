import type { Blend } from '../blend/blend'
import type { Library } from '../blend/library'
import { measureOf } from '../blend/library'
import type { Brief } from './brief'
import { frontierOf } from './frontier'
import { type Limit, limitsOf } from './limits'
import type { SolveProgram } from './program'
import { attainable, type Range, reckonable, withoutWishes, withoutWishesOn } from './ranges'
import { type Relaxation, relaxations } from './relax'
import { attainableRegion, type Axes, type Corner } from './region'
import { type Answer, solveBrief } from './solve'
import { valueUnderWish } from './variation/wishes'
import { CHECK_TOLERANCE, toleranceOn, UnsoundAnswer } from './verify'

/** Everything the Brief and Map page shows of one brief. */
export interface Study {
  readonly answer: Answer
  /** Limits of the brief that the answer stands at, by path. */
  readonly atLimit: readonly string[]
  /** Least and most of each measure over any mix of the shelf. */
  readonly shelf: Readonly<Record<string, Range>>
  /** Least and most of each measure with all other wishes kept; missing where they clash among themselves. */
  readonly reach: Readonly<Record<string, Range>>
  /** Corners of what the two axes can reach, counter-clockwise. */
  readonly region: readonly Corner[]
  /** The part of its edge that nothing beats on both axes. */
  readonly frontier: readonly Corner[]
  /** Single changes that would make an infeasible brief work. */
  readonly relaxations: readonly Relaxation[]
}

/** Solves a brief and finds its surroundings on two axes. An invalid brief has an empty study. */
export function studyBrief(brief: Brief, axes: Axes, library: Library, solve: SolveProgram): Study {
  const answer = solveBrief(brief, library, solve)
  if (answer.status === 'invalid') return { answer, ...NOTHING }
  const ids = reckonable(brief, library)
  const rangesOf = (of: (id: string) => Brief) => ranges(ids, of, library, solve)
  const drawn = axes.every((axis) => ids.includes(axis))
  const region = drawn ? attainableRegion(brief, axes, library, solve) : []
  const shelf = rangesOf(() => withoutWishes(brief))
  const reach = rangesOf((id) => withoutWishesOn(brief, [id]))
  if (answer.status === 'optimal') {
    expectAll(ids, shelf)
    expectAll(ids, reach)
    if (drawn && region.length === 0) throw new UnsoundAnswer('A brief with a blend has no region')
  }
  const wanted = [measureOf(library, axes[0]).better, measureOf(library, axes[1]).better] as const
  return {
    answer,
    atLimit: limitsAt(brief, answer, library).map(({ path }) => path),
    shelf,
    reach,
    region,
    frontier: frontierOf(region, wanted),
    relaxations:
      answer.status === 'infeasible' ? relaxations(brief, answer.conflict, library, solve) : [],
  }
}

const NOTHING = { atLimit: [], shelf: {}, reach: {}, region: [], frontier: [], relaxations: [] }

/** Where a brief has a blend, every measure can be reached with fewer wishes; a solver that says otherwise errs. */
function expectAll(ids: readonly string[], found: Readonly<Record<string, Range>>): void {
  const missing = ids.filter((id) => !found[id])
  if (missing.length > 0) throw new UnsoundAnswer(`No range was found of ${missing.join(', ')}`)
}

function ranges(
  ids: readonly string[],
  briefFor: (id: string) => Brief,
  library: Library,
  solve: SolveProgram,
): Record<string, Range> {
  const entries = ids.flatMap((id) => {
    const range = attainable(briefFor(id), id, library, solve)
    return range ? [[id, range] as const] : []
  })
  return Object.fromEntries(entries)
}

/** The limits that an answer stands at, to the tolerance of the check. */
function limitsAt(brief: Brief, answer: Answer, library: Library): Limit[] {
  if (answer.status !== 'optimal') return []
  return limitsOf(brief).filter((limit) => {
    const value = valueUnder(brief, limit, answer.blend, library)
    const near = limit.kind === 'measure' ? toleranceOn(limit.subject, value) : CHECK_TOLERANCE
    return Math.abs(value - limit.value) <= near
  })
}

function valueUnder(brief: Brief, limit: Limit, blend: Blend, library: Library): number {
  if (limit.kind === 'measure')
    return valueUnderWish(brief, library, limit.subject, limit.side, blend)
  if (limit.kind === 'oil') return blend[limit.subject] ?? 0
  const group = brief.groups[Number(limit.subject)]
  return (group?.oils ?? []).reduce((sum, oil) => sum + (blend[oil] ?? 0), 0)
}
