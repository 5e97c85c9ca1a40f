import { readdirSync, readFileSync } from 'node:fs'
import type { LinearProgram } from '../../../../src/domain/lp/program'

/** A linear program as `tests/cases/lp` stores it; a null bound is infinite. */
interface CaseRow {
  readonly lower: number | null
  readonly upper: number | null
  readonly terms: readonly (readonly [number, number])[]
}

interface CaseVariable {
  readonly lower: number | null
  readonly upper: number | null
  readonly cost: number
  readonly integer: boolean
}

interface CaseProgram {
  readonly name: string
  readonly sense: 'min' | 'max'
  readonly variables: readonly CaseVariable[]
  readonly rows: readonly CaseRow[]
}

/** A published problem with its verified optimum. */
export interface Problem extends CaseProgram {
  readonly source: string
  readonly optimum: number
  readonly published: { readonly optimum: number; readonly basis: 'published' | 'memory' }
}

/** An input on which some other solver failed. */
export interface Trap extends CaseProgram {
  readonly kind: string
  readonly truth: { readonly status: 'optimal' | 'infeasible'; readonly optimum?: number | null }
}

/** A vector program with the full list of its nondominated extreme points. */
export interface VectorProblem {
  readonly name: string
  readonly source: string
  readonly objectives: readonly {
    readonly sense: 'min' | 'max'
    readonly terms: readonly (readonly [number, number])[]
  }[]
  readonly variables: readonly { readonly lower: number | null; readonly upper: number | null }[]
  readonly rows: readonly CaseRow[]
  readonly vertices: readonly { readonly y: readonly number[] }[]
}

const FOLDER = new URL('../../../cases/lp/', import.meta.url)

/** All files of a folder of `tests/cases/lp`. */
export function readCases<T>(folder: 'problems' | 'traps' | 'multiobjective'): T[] {
  const at = new URL(`${folder}/`, FOLDER)
  const names = readdirSync(at).filter((name) => name.endsWith('.json'))
  return names.map((name) => JSON.parse(readFileSync(new URL(name, at), 'utf8')) as T)
}

/** The case as a program to minimise: costs of a `max` case are negated. */
export function programOf(problem: CaseProgram): LinearProgram {
  const sign = problem.sense === 'min' ? 1 : -1
  return {
    cost: problem.variables.map(({ cost }) => sign * cost),
    ...boundsOf(problem.variables),
    rows: problem.rows.map((row) => rowOf(row, problem.variables.length)),
  }
}

/** The feasible set of a vector problem; its cost is zero. */
export function feasibleSetOf(problem: VectorProblem): LinearProgram {
  return {
    cost: problem.variables.map(() => 0),
    ...boundsOf(problem.variables),
    rows: problem.rows.map((row) => rowOf(row, problem.variables.length)),
  }
}

/** Costs of a vector problem, each to be minimised. */
export function costsOf(problem: VectorProblem): number[][] {
  return problem.objectives.map(({ sense, terms }) =>
    dense(terms, problem.variables.length).map((value) => (sense === 'min' ? value : -value)),
  )
}

function boundsOf(variables: VectorProblem['variables']) {
  return {
    lower: variables.map(({ lower }) => lower ?? -Infinity),
    upper: variables.map(({ upper }) => upper ?? Infinity),
  }
}

function rowOf({ lower, upper, terms }: CaseRow, count: number) {
  return {
    coefficients: dense(terms, count),
    lower: lower ?? -Infinity,
    upper: upper ?? Infinity,
  }
}

function dense(terms: CaseRow['terms'], count: number): number[] {
  const coefficients = Array<number>(count).fill(0)
  for (const [j, value] of terms) coefficients[j] = (coefficients[j] ?? 0) + value
  return coefficients
}
