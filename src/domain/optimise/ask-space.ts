import type { Library } from '../blend/library'
import { BlendSpace } from './blend-space'
import type { Brief } from './brief'
import { checkBrief } from './check-brief'
import { findConflict } from './conflict'
import type { Answer } from './solve'
import { solveWithOwn } from './solvers/own'

/** Why a question about a brief has no answer. */
export type NoAnswer = Extract<Answer, { status: 'invalid' | 'infeasible' }>

/**
 * Answers a question about all blends that keep a brief. A question that comes back with nothing means
 * that there are none, and the answer then names the limits that can't hold together.
 */
export function askSpace<T>(
  brief: Brief,
  library: Library,
  question: (space: BlendSpace) => T | undefined,
): T | NoAnswer {
  const problems = checkBrief(brief, library)
  if (problems.length > 0) return { status: 'invalid', problems }
  return question(new BlendSpace(brief, library)) ?? noBlend(brief, library)
}

/** The answer to a sound brief that no blend keeps. */
export function noBlend(brief: Brief, library: Library): NoAnswer {
  return { status: 'infeasible', conflict: findConflict(brief, library, solveWithOwn) }
}
