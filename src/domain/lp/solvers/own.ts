import { Simplex } from '../simplex/simplex'
import type { LinearProgram, ProgramOutcome, Row } from './program'

/**
 * Solves with the project's own simplex, which proves every answer: an optimum by equal primal and dual
 * objectives, no solution by a Farkas ray. Throws AccuracyError where rounding beat every attempt.
 */
export function solveWithOwn(program: LinearProgram): ProgramOutcome {
  const { variables, sense } = program
  const sign = sense === 'min' ? 1 : -1
  const outcome = new Simplex({
    cost: variables.map(({ cost }) => sign * cost),
    lower: variables.map(({ lower }) => lower),
    upper: variables.map(({ upper }) => upper),
    rows: program.rows.map((row) => ({
      coefficients: coefficientsOf(row, variables.length),
      lower: row.lower,
      upper: row.upper,
    })),
  }).solve()
  if (outcome.status !== 'optimal') return { status: outcome.status }
  return { status: 'optimal', point: [...outcome.x], objective: sign * outcome.objective }
}

function coefficientsOf(row: Row, count: number): Float64Array {
  const coefficients = new Float64Array(count)
  for (const [index, coefficient] of row.terms)
    coefficients[index] = (coefficients[index] ?? 0) + coefficient
  return coefficients
}
