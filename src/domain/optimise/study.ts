import type { Blend } from '../blend/blend'
import type { Library } from '../blend/library'
import { reachOfMeasures } from './attainable'
import { BlendSpace } from './blend-space'
import type { Brief } from './brief'
import { type Limit, limitsOf } from './limits'
import type { SolveProgram } from './program'
import { type Range, withoutWishes } from './ranges'
import { type SharedLoss, sharedLoss, type SingleChange, singleChanges } from './reasons'
import { type Answer, solveBrief } from './solve'
import { valueUnderWish } from './variation/wishes'
import { CHECK_TOLERANCE, toleranceOn } from './verify'

/** Everything the Brief and Map page shows of one brief. */
export interface Study {
  readonly answer: Answer
  /** Limits of the brief that the answer stands at, by path. */
  readonly atLimit: readonly string[]
  /** Least and most of each measure over any mix of the shelf. */
  readonly shelf: Readonly<Record<string, Range>>
  /** Least and most of each measure with all other wishes kept; missing where they clash among themselves. */
  readonly reach: Readonly<Record<string, Range>>
  /** Single changes that would make an infeasible brief work. */
  readonly relaxations: readonly SingleChange[]
  /** The way out of a clash in which all its limits give way alike; missing where that is none. */
  readonly shared?: SharedLoss | undefined
}

/** Solves a brief with a solver and finds what lies around the answer. An invalid brief has an empty study. */
export function studyBrief(brief: Brief, library: Library, solve: SolveProgram): Study {
  const answer = solveBrief(brief, library, solve)
  if (answer.status === 'invalid')
    return { answer, atLimit: [], shelf: {}, reach: {}, relaxations: [] }
  return {
    answer,
    atLimit: limitsAt(brief, answer, library).map(({ path }) => path),
    shelf: reachOfMeasures(new BlendSpace(withoutWishes(brief), library)),
    reach: reachOfMeasures(new BlendSpace(brief, library)),
    relaxations:
      answer.status === 'infeasible' ? singleChanges(brief, answer.conflict, library) : [],
    shared:
      answer.status === 'infeasible' && answer.conflict.length > 1
        ? sharedLoss(brief, answer.conflict, library)
        : undefined,
  }
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
