import { type BlendRules, noRules } from '../../../../src/domain/lp/search/rules'
import { solveWithRules } from '../../../../src/domain/lp/search/branch'
import { contest, type Entry } from '../contest'
import { type Problem, problemOf } from '../problem'
import type { Rivals } from '../rivals/all'
import type { MixedProgram, Rival } from '../rivals/rival'
import type { Effort, TaskResult } from '../task'

const SIZE = { oils: 40, measures: 6, groups: 2 }
const MOST_OILS = 5
const LEAST_PERCENT = 5

/** At most 5 of 40 oils, each with 5 % or more; all searches to the end, yalps' within a time. */
export function rules(rivals: Rivals, { pick }: Effort): TaskResult {
  const capMs = pick(1000, 200)
  const { glpk, highs } = rivals
  const yalps = rivals.yalpsWithin(capMs)
  const standings = contest({
    instances: pick(100, 12),
    rounds: pick(3, 2),
    warmUps: 2,
    judge: highs.name,
    makeHeat(seed) {
      const problem = fromNothing(problemOf(seed, SIZE))
      const mixed = withUses(problem.program)
      const others = [
        rivalEntry(glpk, mixed),
        rivalEntry(yalps, mixed, 1),
        rivalEntry(highs, mixed, 1),
      ]
      return {
        entries: [ownEntry(problem), ...others.map(({ entry }) => entry)],
        dispose: () => others.forEach(({ dispose }) => dispose()),
      }
    },
  })
  return { id: 'rules', standings, facts: `yalps stopped after ${capMs} ms` }
}

/** Without least shares: every oil may be left out. */
function fromNothing(problem: Problem): Problem {
  const { program } = problem
  return { ...problem, program: { ...program, lower: new Float64Array(program.cost.length) } }
}

function ownEntry({ program }: Problem): Entry {
  const count = program.cost.length
  const blendRules: BlendRules = {
    ...noRules(count),
    leastUse: new Float64Array(count).fill(LEAST_PERCENT),
    counts: [{ variables: Array.from(program.lower, (_, j) => j), least: 0, most: MOST_OILS }],
  }
  return {
    name: 'barwright',
    run() {
      const outcome = solveWithRules(program, blendRules, () => true)
      return () => {
        if (outcome.status === 'optimal') return [outcome.best.objective]
        return [outcome.status === 'infeasible' ? 'infeasible' : 'no answer']
      }
    },
  }
}

function rivalEntry(rival: Rival, program: MixedProgram, rounds?: number) {
  const model = rival.prepare(program)
  const run = () => {
    model.solve()
    return () => [model.verdict()]
  }
  return { entry: { name: rival.name, run, rounds }, dispose: () => model.dispose() }
}

/** Shares x and uses y of 0 or 1: 5 y ≤ x ≤ most · y for every oil, and at most five uses. */
function withUses(program: Problem['program']): MixedProgram {
  const n = program.cost.length
  const shares = Array.from({ length: n }, (_, j) => j)
  const row = (entries: readonly (readonly [number, number])[]) => {
    const coefficients = new Float64Array(2 * n)
    for (const [j, value] of entries) coefficients[j] = value
    return coefficients
  }
  const link = (j: number, limit: number) =>
    row([
      [j, 1],
      [n + j, -limit],
    ])
  return {
    cost: Float64Array.from([...Array.from(program.cost), ...shares.map(() => 0)]),
    lower: new Float64Array(2 * n),
    upper: Float64Array.from([...Array.from(program.upper), ...shares.map(() => 1)]),
    rows: [
      ...program.rows.map((one) => ({
        ...one,
        coefficients: row(shares.map((j) => [j, one.coefficients[j] ?? NaN])),
      })),
      ...shares.map((j) => ({
        coefficients: link(j, program.upper[j] ?? NaN),
        lower: -Infinity,
        upper: 0,
      })),
      ...shares.map((j) => ({
        coefficients: link(j, LEAST_PERCENT),
        lower: 0,
        upper: Infinity,
      })),
      { coefficients: row(shares.map((j) => [n + j, 1])), lower: -Infinity, upper: MOST_OILS },
    ],
    binary: shares.map((j) => n + j),
  }
}
