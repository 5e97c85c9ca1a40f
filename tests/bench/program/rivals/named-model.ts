import type { MixedProgram } from './rival'

/** A range as yalps and javascript-lp-solver read it. */
export interface NamedRange {
  equal?: number
  min?: number
  max?: number
}

/** A program in the form that yalps took over from javascript-lp-solver: names for everything. */
export interface NamedModel {
  readonly constraints: Record<string, NamedRange>
  readonly variables: Record<string, Record<string, number>>
  /** Names of the variables, in the program's order. */
  readonly names: readonly string[]
}

export const OBJECTIVE = 'objective'

/**
 * The program by names, variables from 0 up. Neither solver knows bounds on a variable, so each one is a
 * row. With `lean`, bounds that the sum row implies (at most the whole) are left out: somebody who knows
 * these solvers well would do so, since every row makes their tableau larger.
 */
export function namedModel(program: MixedProgram, lean: boolean): NamedModel {
  const names = Array.from({ length: program.cost.length }, (_, j) => `x${j}`)
  const constraints: Record<string, NamedRange> = {}
  const variables: Record<string, Record<string, number>> = {}
  program.rows.forEach(({ lower, upper }, i) => (constraints[rowName(i)] = range(lower, upper)))
  const binary = new Set(program.binary)
  names.forEach((name, j) => {
    const column: Record<string, number> = { [OBJECTIVE]: program.cost[j] ?? NaN }
    program.rows.forEach(({ coefficients }, i) => {
      const coefficient = coefficients[j] ?? NaN
      if (coefficient !== 0) column[rowName(i)] = coefficient
    })
    const [lower, upper] = [program.lower[j] ?? NaN, program.upper[j] ?? NaN]
    const most = lean && upper >= wholeOf(program) ? Infinity : upper
    if (!binary.has(j) && (lower !== 0 || most < Infinity)) {
      constraints[`${name} limits`] = range(lower === 0 ? -Infinity : lower, most)
      column[`${name} limits`] = 1
    }
    variables[name] = column
  })
  return { constraints, variables, names }
}

/** What the variables add up to, if the first row says so: every blend's does. */
function wholeOf({ rows }: MixedProgram): number {
  const first = rows[0]
  const adds = first && Array.from(first.coefficients).every((one) => one === 1 || one === 0)
  return first && adds && first.lower === first.upper ? first.upper : Infinity
}

export function setNamedCost({ variables, names }: NamedModel, cost: ArrayLike<number>): void {
  names.forEach((name, j) => {
    const column = variables[name]
    if (column) column[OBJECTIVE] = cost[j] ?? NaN
  })
}

export function setNamedRow(model: NamedModel, row: number, lower: number, upper: number): void {
  model.constraints[rowName(row)] = range(lower, upper)
}

const rowName = (row: number) => `r${row}`

function range(lower: number, upper: number): NamedRange {
  if (lower === upper) return { equal: lower }
  return {
    ...(lower > -Infinity ? { min: lower } : {}),
    ...(upper < Infinity ? { max: upper } : {}),
  }
}
