import { type LinearProgram as DenseProgram, Simplex } from '../../simplex'
import type { LinearProgram, ProgramOutcome } from '../program'

/** Solves a program once with our own simplex, cold. */
export function solveProgram(program: LinearProgram): ProgramOutcome {
  const { sense, variables } = program
  const sign = sense === 'min' ? 1 : -1
  const outcome = new Simplex(dense(program, sign)).solve()
  if (outcome.status !== 'optimal') return { status: outcome.status }
  const point = Array.from(outcome.x.subarray(0, variables.length))
  return { status: 'optimal', point, objective: sign * outcome.objective }
}

function dense({ variables, rows }: LinearProgram, sign: number): DenseProgram {
  return {
    cost: variables.map(({ cost }) => sign * cost),
    lower: variables.map(({ lower }) => lower),
    upper: variables.map(({ upper }) => upper),
    rows: rows.map(({ lower, upper, terms }) => {
      const coefficients = new Float64Array(variables.length)
      for (const [index, coefficient] of terms) coefficients[index] = coefficient
      return { coefficients, lower, upper }
    }),
  }
}
