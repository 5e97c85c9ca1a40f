import solver, { type ConstraintBound, type Model } from 'javascript-lp-solver'
import type { LinearProgram, ProgramOutcome, Row, Variable } from './program'
import { UnsoundAnswer } from '../unsound-answer'

/**
 * Solves with javascript-lp-solver 1.0.3.
 *
 * Known of it (measured over some 59,000 random blends): about one in 8,000 degenerate programs is
 * never answered, so it must run where it can be stopped; and an infeasible answer still holds values,
 * so nothing is read before `feasible` and `bounded`. Throws UnsoundAnswer where a value is no number.
 */
export function solveWithJslp(program: LinearProgram): ProgramOutcome {
  if (program.variables.some((variable) => variable.lower > variable.upper))
    return { status: 'infeasible' }
  const answer = solver.Solve(jslpModel(program)) as Record<string, unknown>
  if (answer.feasible !== true) return { status: 'infeasible' }
  if (answer.bounded === false) return { status: 'unbounded' }
  const point = program.variables.map((variable, index) => {
    const value = answer[columnName(index)] ?? 0
    if (typeof value !== 'number' || !Number.isFinite(value))
      throw new UnsoundAnswer(`javascript-lp-solver gave no number for ${variable.name}`)
    return value + offset(variable)
  })
  const objective = program.variables.reduce((sum, { cost }, j) => sum + cost * (point[j] ?? 0), 0)
  return { status: 'optimal', point, objective }
}

const columnName = (index: number) => `x${index}`
const rowName = (index: number) => `r${index}`
const boundName = (index: number) => `b${index}`

/** Variables start at 0 in this solver, so one with another finite lower bound is measured from there. */
const offset = ({ lower }: Variable) => (Number.isFinite(lower) ? lower : 0)

function jslpModel(program: LinearProgram): Model {
  const constraints: Record<string, ConstraintBound> = {}
  const variables: Record<string, Record<string, number>> = {}
  const unrestricted: Record<string, 1> = {}
  program.variables.forEach((variable, index) => {
    const column: Record<string, number> = { goal: variable.cost }
    if (Number.isFinite(variable.upper)) {
      constraints[boundName(index)] = limits(-Infinity, variable.upper - offset(variable))
      column[boundName(index)] = 1
    }
    if (variable.lower === -Infinity) unrestricted[columnName(index)] = 1
    variables[columnName(index)] = column
  })
  program.rows.forEach((row, number) => {
    if (row.lower === -Infinity && row.upper === Infinity) return
    const shift = shiftOf(row, program.variables)
    constraints[rowName(number)] = limits(row.lower - shift, row.upper - shift)
    for (const [index, coefficient] of row.terms) {
      const column = variables[columnName(index)]
      if (column) column[rowName(number)] = (column[rowName(number)] ?? 0) + coefficient
    }
  })
  return { optimize: 'goal', opType: program.sense, constraints, variables, unrestricted }
}

function shiftOf(row: Row, variables: readonly Variable[]): number {
  return row.terms.reduce((sum, [index, coefficient]) => {
    const variable = variables[index]
    return variable ? sum + coefficient * offset(variable) : sum
  }, 0)
}

function limits(lower: number, upper: number): ConstraintBound {
  if (lower === upper) return { equal: lower }
  return {
    ...(Number.isFinite(lower) ? { min: lower } : {}),
    ...(Number.isFinite(upper) ? { max: upper } : {}),
  }
}
