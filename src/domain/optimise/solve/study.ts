import type { Blend } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { reachOfMeasures } from '../ranges/attainable-linear'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { type Limit, limitsOf } from '../brief/limits'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import { withoutWishes } from '../brief/ranges'
import type { Interval } from '../../interval'
import { nearestWayOut, type WayOut } from '../infeasible/way-out'
import { sharedLoss } from '../infeasible/shared-loss'
import { type SingleChange, singleChanges } from '../infeasible/single-changes'
import { reachUnderRules, type RuledRange } from '../ranges/attainable-ruled'
import { statesRules } from '../brief/brief-rules'
import type { Answer } from '../brief/answer'
import { solveBrief } from './solve'
import { valueUnderWish } from '../lots/wishes'
import { CHECK_TOLERANCE, toleranceOn } from '../space/verify'

/** Everything Map shows of one brief. */
export interface Study {
  readonly answer: Answer
  /** Limits of the brief that the answer stands at, by path. */
  readonly atLimit: readonly string[]
  /** Least and most of each measure over any mix of the shelf. */
  readonly shelf: Readonly<Record<string, Interval>>
  /**
   * Least and most of each measure with all other wishes and rules kept; missing where they clash among
   * themselves. Under rules each says what is proved of it.
   */
  readonly reach: Readonly<Record<string, Interval | RuledRange>>
  /** Measures whose reach is not found: not yet, or under rules not in time. */
  readonly openReach: readonly string[]
  /** Single changes that would make an infeasible brief work. */
  readonly relaxations: readonly SingleChange[]
  /** The way out of a clash in which all its limits give way alike; missing where that is none. */
  readonly shared?: WayOut | undefined
  /** Where neither of these is enough: the least that is, over all limits. */
  readonly nearest?: WayOut | undefined
}

/** Milliseconds for what the measures reach under rules; what is not proved by then says so. */
const REACH_TIME_MS = 2000

/**
 * Solves a brief with a solver and finds what lies around the answer. An invalid brief has an empty
 * study. Under rules `onAnswer` hears the answer before what the measures reach is looked for.
 */
export function studyBrief(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  onAnswer?: (study: Study) => void,
): Study {
  const answer = solveBrief(brief, library, solve)
  const nothing: Study = { answer, ...NOTHING_AROUND }
  if (answer.status === 'invalid') return nothing
  const space = new BlendSpace(brief, library)
  const study: Study = {
    ...nothing,
    atLimit: limitsAt(brief, answer, library).map(({ path }) => path),
    shelf: reachOfMeasures(new BlendSpace(withoutWishes(brief), library)),
    ...(answer.status === 'infeasible' ? waysOut(brief, answer.conflict, library) : {}),
  }
  if (!statesRules(brief)) return { ...study, reach: reachOfMeasures(space) }
  onAnswer?.({ ...study, openReach: space.measures })
  return { ...study, ...ruledReach(space) }
}

const NOTHING_AROUND = { atLimit: [], shelf: {}, reach: {}, openReach: [], relaxations: [] }

function waysOut(
  brief: Brief,
  conflict: readonly string[],
  library: Library,
): Pick<Study, 'relaxations' | 'shared' | 'nearest'> {
  const relaxations = singleChanges(brief, conflict, library)
  const shared = conflict.length > 1 ? sharedLoss(brief, conflict, library) : undefined
  const enough = relaxations.length > 0 || shared !== undefined
  return { relaxations, shared, nearest: enough ? undefined : nearestWayOut(brief, library) }
}

function ruledReach(space: BlendSpace): Pick<Study, 'reach' | 'openReach'> {
  const found = Object.entries(reachUnderRules(space, { timeMs: REACH_TIME_MS }))
  const ranges = found.flatMap(([id, range]) =>
    range === 'undecided' ? [] : [[id, range] as const],
  )
  return {
    reach: Object.fromEntries(ranges),
    openReach: found.flatMap(([id, range]) => (range === 'undecided' ? [id] : [])),
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
