import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { contest, type Entry, type Standing } from '../contest'
import { type Problem, problemOf, type Size, USUAL } from '../problem'
import type { Rivals } from '../rivals/all'
import type { Rival } from '../rivals/rival'
import type { Effort, TaskResult } from '../task'

const SIZES = [20, 40, 80, 160, 320]

/** One cold solve with its certificate: made anew, and loaded into a solver that is kept. */
export function coldSolve(rivals: Rivals, { pick }: Effort): TaskResult {
  const standings = coldContest(USUAL, rivals, {
    instances: pick(100, 40),
    rounds: pick(12, 3),
    warmUps: pick(4, 4),
  })
  return { id: 'cold', standings, facts: '' }
}

/** The same as the shelf grows. */
export function growth(rivals: Rivals, { pick }: Effort): TaskResult[] {
  return SIZES.map((oils) => {
    const order = { instances: pick(20, 8), rounds: pick(10, 2), warmUps: pick(3, 2) }
    const standings = coldContest({ ...USUAL, oils }, rivals, order)
    return { id: `cold-${oils}`, standings, facts: '' }
  })
}

function coldContest(
  size: Size,
  rivals: Rivals,
  order: { instances: number; rounds: number; warmUps: number },
): Standing[] {
  const kept = new Simplex(problemOf(0, size).program)
  const { yalps, yalpsLean, jslp, jslpLean, glpk, highs } = rivals
  return contest({
    ...order,
    judge: highs.name,
    makeHeat(seed) {
      const problem = problemOf(seed, size)
      const others = [yalps, yalpsLean, glpk, jslp, jslpLean, highs].map((one) => {
        return rivalEntry(one, problem)
      })
      return {
        entries: [anew(problem), loaded(sameRows(problem, kept), problem), ...others],
        dispose: () => undefined,
      }
    },
  })
}

/** A kept solver takes programs of its own shape; ranges without an end may give others fewer rows. */
function sameRows({ program }: Problem, kept: Simplex): Simplex {
  return kept.program.rowCount === program.rows.length ? kept : new Simplex(program)
}

function anew({ program }: Problem): Entry {
  return {
    name: 'barwright',
    run() {
      const outcome = new Simplex(program).solve()
      return () => [outcome.status === 'optimal' ? outcome.objective : 'infeasible']
    },
  }
}

function loaded(solver: Simplex, { program }: Problem): Entry {
  return {
    name: 'barwright, loaded',
    run() {
      solver.load(program)
      const outcome = solver.solve()
      const verdict = outcome.status === 'optimal' ? outcome.objective : 'infeasible'
      return () => [verdict]
    },
  }
}

function rivalEntry(rival: Rival, { program }: Problem): Entry {
  const model = rival.prepare(program)
  return {
    name: rival.name,
    run() {
      model.solve()
      return () => [model.verdict()]
    },
  }
}
