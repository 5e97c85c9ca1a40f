import type { Library } from '../../../../src/domain/blend/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { formulate } from '../../../../src/domain/optimise/space/formulate'
import type { SolveProgram } from '../../../../src/domain/lp/solvers/solve-program'

/** Whether any blend meets all limits of a sound brief, by a solver that the product does not ask. */
export function isFeasible(brief: Brief, library: Library, solve: SolveProgram): boolean {
  return solve(formulate(brief, library, 'limits only')).status !== 'infeasible'
}
