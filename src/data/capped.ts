import type { Problem } from '../domain/blend/check-blend'

/** As many problems as anyone mends at one go. */
export const MOST_PROBLEMS = 50

/** The first problems, and how many more there are as one more. */
export function capped(problems: readonly Problem[]): readonly Problem[] {
  // A list that has been capped before ends in its count.
  if (problems.length <= MOST_PROBLEMS + 1) return problems
  return [...problems.slice(0, MOST_PROBLEMS), moreProblems(problems.length - MOST_PROBLEMS)]
}

/** Says how many problems are not told. */
export function moreProblems(count: number): Problem {
  return { path: '', message: `${count} more problems are not told. Mend these first.` }
}
