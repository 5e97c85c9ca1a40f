import type { Blend } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { type Limit, limitsOf, withLimit } from '../brief/limits'
import { bestBlend } from '../search/best-blend'
import type { Found, LimitChange } from '../brief/answer'
import { solveWithOwn } from '../../lp/solvers/own'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { conflictOf } from './conflict-linear'
import { type Give, leastRelaxation } from './elastic'
import { marksBeyond } from './marks'

/** A brief near the one asked for that has a blend, or why there is none. */
export type Nearest =
  | {
      readonly status: 'found'
      /** What must give way, rounded to the side that works. */
      readonly changes: readonly LimitChange[]
      /** The best blend, by the goal of the brief, once they have given way. */
      readonly blend: Blend
      /** The least weighted total of what gives way before rounding, in the units of `unitsPer`. */
      readonly units: number
    }
  | {
      readonly status: 'locked'
      /** Limits among the locked ones that cannot hold together. */
      readonly conflict: readonly string[]
    }

/** What the maker holds on to. */
export interface NearestOptions {
  /** Paths of limits that must not give way. */
  readonly locked?: readonly string[] | undefined
}

/**
 * The nearest brief that has a blend: the least weighted relaxation of the limits that are not locked
 * (see `leastRelaxation`), each changed limit rounded to a tenth of a point or percent or a cent, to the
 * side that works; a change that the rounding of the others has made needless is taken back. The blend
 * is checked against the changed brief. A brief that has a blend needs no change.
 * Expects a sound brief without rules on which oils are used: those are never moved.
 */
export function nearestFeasible(
  brief: Brief,
  library: Library,
  { locked = [] }: NearestOptions = {},
): Nearest {
  const least = leastRelaxation(new BlendSpace(brief, library), locked)
  if (!least) return { status: 'locked', conflict: conflictOf(withOnly(brief, locked), library) }
  const { changes, found } = rounded(brief, least.gives, library)
  return { status: 'found', changes, blend: found.blend, units: least.units }
}

/** Tries the nearest marks for all changes at once, then the next ones. */
function rounded(
  brief: Brief,
  gives: readonly Give[],
  library: Library,
): { changes: LimitChange[]; found: Found } {
  const marks = gives.map(({ limit, to }) => ({ limit, marks: marksBeyond(to, limit) }))
  const tries = Math.max(1, ...marks.map((one) => one.marks.length))
  for (let k = 0; k < tries; k++) {
    const moves = marks.map(({ limit, marks }) => ({ limit, to: marks[k] ?? marks.at(-1) ?? NaN }))
    if (!bestOf(brief, moves, library)) continue
    const needed = withoutNeedless(brief, moves, library)
    const found = bestOf(brief, needed, library)
    if (found) return { changes: needed.map(changeOf), found }
  }
  throw new UnsoundAnswer('The nearest brief was said to have a blend and has none')
}

/** The moves without those that the others, rounded, have made needless. */
function withoutNeedless(brief: Brief, moves: readonly Give[], library: Library): readonly Give[] {
  return moves.reduce<readonly Give[]>((kept, move) => {
    const fewer = kept.filter((one) => one !== move)
    return bestOf(brief, fewer, library) ? fewer : kept
  }, moves)
}

function bestOf(brief: Brief, moves: readonly Give[], library: Library): Found | undefined {
  const changed = moves.reduce((kept, { limit, to }) => withLimit(kept, limit, to), brief)
  return bestBlend(changed, library, solveWithOwn)
}

function changeOf({ limit, to }: Give): LimitChange {
  return { limit: limit.path, from: limit.value, to }
}

/** The brief with only some of its limits. */
function withOnly(brief: Brief, paths: readonly string[]): Brief {
  return limitsOf(brief)
    .filter((limit: Limit) => !paths.includes(limit.path))
    .reduce((kept, limit) => withLimit(kept, limit, undefined), brief)
}
