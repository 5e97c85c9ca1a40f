import type { LinearProgram } from '../../../src/domain/lp/program'
import { Simplex } from '../../../src/domain/lp/simplex/simplex'
import type { Entry } from './contest'
import { isLimiting } from './problem'
import { NOTHING_TO_FREE, type Rival, type RivalModel, type Verdict } from './rivals/rival'

/** What changed before a solve: the cost, and the limits of some rows. */
export interface Question {
  readonly cost: Float64Array | undefined
  readonly rows: readonly RowChange[]
  /** What our own solver answered. */
  readonly verdict: Verdict
}

interface RowChange {
  readonly row: number
  readonly lower: number
  readonly upper: number
}

/**
 * Every linear program that a task asks of a simplex, in order. Rivals are then asked the very same
 * ones, so that a task is compared under the same algorithm and its answers one by one. Changes the
 * simplex it is given for good: record on one of its own.
 */
export function recorded(simplex: Simplex, task: () => void): Question[] {
  const questions: Question[] = []
  let cost: Float64Array | undefined
  let rows: RowChange[] = []
  const original = Object.getPrototypeOf(simplex) as Simplex
  Object.assign(simplex, {
    setCost(values: ArrayLike<number>) {
      cost = Float64Array.from(values)
      original.setCost.call(simplex, values)
    },
    setRowBounds(row: number, lower: number, upper: number) {
      rows.push({ row, lower, upper })
      original.setRowBounds.call(simplex, row, lower, upper)
    },
    solve() {
      const outcome = original.solve.call(simplex)
      const verdict = outcome.status === 'optimal' ? outcome.objective : outcome.status
      if (verdict === 'unbounded') throw new Error('A blend of limited shares was called unbounded')
      questions.push({ cost, rows, verdict })
      cost = undefined
      rows = []
      return outcome
    },
  })
  task()
  return questions
}

/** A rival that answers recorded questions one after another, with no work of its own between them. */
export function replay(
  rival: Rival,
  program: LinearProgram,
  questions: readonly Question[],
  rounds?: number,
): { readonly entry: Entry; readonly dispose: () => void } {
  const changing = new Set(questions.flatMap(({ rows }) => rows.map(({ row }) => row)))
  const { model, places } = modelWith(rival, program, changing)
  const changed = [...places].filter(([row]) => changing.has(row))
  const verdicts: Verdict[] = []
  const run = () => {
    verdicts.length = 0
    for (const [row, place] of changed) {
      const { lower = -Infinity, upper = Infinity } = program.rows[row] ?? {}
      model.setRow(place, lower, upper)
    }
    for (const { cost, rows } of questions) {
      if (cost) model.setCost(cost)
      for (const { row, lower, upper } of rows) model.setRow(places.get(row) ?? NaN, lower, upper)
      model.solve()
      verdicts.push(model.verdict())
    }
    return () => verdicts
  }
  return { entry: { name: rival.name, run, rounds }, dispose: () => model.dispose() }
}

/** Our own solver on the same questions, from basis to basis: what of a task is linear programs. */
export function ownReplay(
  program: LinearProgram,
  questions: readonly Question[],
): { readonly entry: Entry; readonly dispose: () => void } {
  const simplex = new Simplex(program)
  const changing = new Set(questions.flatMap(({ rows }) => rows.map(({ row }) => row)))
  const verdicts: Verdict[] = []
  const run = () => {
    verdicts.length = 0
    simplex.reset()
    for (const row of changing) {
      const { lower = -Infinity, upper = Infinity } = program.rows[row] ?? {}
      simplex.setRowBounds(row, lower, upper)
    }
    for (const { cost, rows } of questions) {
      if (cost) simplex.setCost(cost)
      for (const { row, lower, upper } of rows) simplex.setRowBounds(row, lower, upper)
      const outcome = simplex.solve()
      verdicts.push(outcome.status === 'optimal' ? outcome.objective : 'infeasible')
    }
    return () => verdicts
  }
  return { entry: { name: 'barwright, its solves alone', run }, dispose: NOTHING_TO_FREE }
}

/** A rival's model of a program, and where in it the program's rows are. */
export interface RowsModel {
  readonly model: RivalModel
  readonly places: ReadonlyMap<number, number>
}

/** A rival carries no row that limits nothing, unless it will be limited. */
export function modelWith(rival: Rival, program: LinearProgram, willLimit: Set<number>): RowsModel {
  const needed = [...program.rows.entries()].filter(
    ([row, one]) => isLimiting(one) || willLimit.has(row),
  )
  return {
    model: rival.prepare({ ...program, rows: needed.map(([, one]) => one) }),
    places: new Map(needed.map(([row], place) => [row, place])),
  }
}
