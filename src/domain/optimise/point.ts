import type { Library } from '../blend/library'
import type { Brief, Wish } from './brief'
import type { SolveProgram } from './program'
import type { SearchBudget } from './rules/allowance'
import { type Answer, solveBrief } from './solve'
import { toleranceOn } from './verify'

/** Values to hit by measure id, in each measure's unit. */
export type Point = Readonly<Record<string, number>>

/**
 * The blend that hits a point of the map and is best at the brief's goal there. The wishes on the
 * point's own measures give way; all other limits hold. The point is hit to 1e-6 of the measure's unit
 * (of money, one part in a million), so that a point read off the region's edge is still inside it.
 * The budget bounds the search under rules.
 */
export function solveAt(
  brief: Brief,
  point: Point,
  library: Library,
  solve: SolveProgram,
  budget?: SearchBudget,
): Answer {
  const exact = Object.entries(point).map(([id, value]): [string, Wish] => {
    const near = toleranceOn(id, value)
    return [id, { min: value - near, max: value + near, typicalOnly: true }]
  })
  const measures = { ...brief.measures, ...Object.fromEntries(exact) }
  const answer = solveBrief({ ...brief, measures }, library, solve, budget)
  if (answer.status !== 'infeasible') return answer
  return {
    ...answer,
    conflict: [...new Set(answer.conflict.map((path) => pointPath(path, point)))],
  }
}

/** A limit that the point set is the point's, not the brief's: point.hardness. */
function pointPath(path: string, point: Point): string {
  const measure = Object.keys(point).find((id) => path.startsWith(`measures.${id}.`))
  return measure === undefined ? path : `point.${measure}`
}
