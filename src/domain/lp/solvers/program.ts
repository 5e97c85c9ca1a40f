import { leavesRoom, touchOf } from '../touching'

/** A variable of a linear program with its bounds; either may be infinite. */
export interface Variable {
  readonly name: string
  readonly lower: number
  readonly upper: number
  readonly cost: number
}

/** A row lower ≤ Σ coefficient × variable ≤ upper; either limit may be infinite, equal limits make an equation. */
export interface Row {
  readonly name: string
  readonly lower: number
  readonly upper: number
  /** Pairs of variable number and coefficient, each variable at most once; one left out has coefficient 0. */
  readonly terms: readonly (readonly [number, number])[]
}

/** A linear program: the best value of Σ cost × variable under its rows and bounds. */
export interface LinearProgram {
  readonly sense: 'min' | 'max'
  readonly variables: readonly Variable[]
  readonly rows: readonly Row[]
}

/** What a solver found. Only an optimal outcome carries a point. */
export type ProgramOutcome =
  | { readonly status: 'optimal'; readonly point: readonly number[]; readonly objective: number }
  | { readonly status: 'infeasible' }
  | { readonly status: 'unbounded' }

/** The narrow interface behind which every solver stands. Throws only when it cannot answer at all. */
export type SolveProgram = (program: LinearProgram) => ProgramOutcome

/**
 * The same program with room for limits that touch (`touching.ts`): rows are wider by it, and bounds of a
 * variable that cross by no more are one.
 */
export function withTouchingRows(program: LinearProgram): LinearProgram {
  return {
    ...program,
    variables: program.variables.map((one) => {
      if (one.lower <= one.upper || !leavesRoom(one.lower, one.upper)) return one
      const middle = (one.lower + one.upper) / 2
      return { ...one, lower: middle, upper: middle }
    }),
    rows: program.rows.map((row) => ({
      ...row,
      lower: row.lower - touchOf(row.lower),
      upper: row.upper + touchOf(row.upper),
    })),
  }
}

/** Value of a row at a point. */
export function rowValue(row: Row, point: readonly number[]): number {
  return row.terms.reduce((sum, [index, coefficient]) => sum + coefficient * (point[index] ?? 0), 0)
}
