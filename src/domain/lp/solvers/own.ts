import type { LinearProgram } from '../program'
import { Simplex } from '../simplex/simplex'
import type { ProgramOutcome } from './solve-program'

/**
 * Solves with the project's own simplex, which proves every answer: an optimum by equal primal and dual
 * objectives, no solution by a Farkas ray. Throws AccuracyError where rounding beat every attempt.
 */
export function solveWithOwn(program: LinearProgram): ProgramOutcome {
  const outcome = new Simplex(program).solve()
  if (outcome.status !== 'optimal') return { status: outcome.status }
  return { status: 'optimal', point: [...outcome.x], objective: outcome.objective }
}
