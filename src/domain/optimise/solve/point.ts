import type { Library } from '../../blend/library'
import type { Brief, Wish } from '../brief/brief'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import type { SearchBudget } from '../search/allowance'
import type { Answer } from '../brief/answer'
import { solveBrief } from './solve'
import { toleranceOn } from '../space/verify'

/** Values to hit by measure id, in each measure's unit. */
export type Point = Readonly<Record<string, number>>

/** How near a point is to be hit, and how long a search for it may take. */
export interface PointOptions extends SearchBudget {
  /** By measure, in its unit; a tolerance far below what can be told where left out. */
  readonly within?: Point | undefined
}

/**
 * The blend that hits a point of the map and is best at the brief's goal there. The wishes on the
 * point's own measures give way; all other limits hold. The point is hit to 1e-6 of the measure's unit
 * (of money, one part in a million), so that a point read off the region's edge is still inside it.
 * `within` widens that, by measure, to as much on either side: with steps hardly a blend hits a point.
 * The budget bounds the search under rules.
 */
export function solveAt(
  brief: Brief,
  point: Point,
  library: Library,
  solve: SolveProgram,
  { within = {}, ...budget }: PointOptions = {},
): Answer {
  const exact = Object.entries(point).map(([id, value]): [string, Wish] => {
    const near = within[id] ?? toleranceOn(id, value)
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
