import { afterAll, describe, expect, test } from 'vitest'
import type { LinearProgram, LinearRow } from '../../../../src/domain/lp/program'
import type { ProgramOutcome } from '../../../../src/domain/lp/solvers/solve-program'
import { solveWithJslp } from '../../../../src/domain/lp/solvers/jslp'
import { stoppableJslp } from '../../../worker/stoppable-jslp'
import { programOf } from '../simplex/case-files'
import { highs } from './loaded-highs'
import { needsIntegers, type Problem, problems, type Trap, traps } from './lp-cases'

/** Relative, of the optimum and of each row: javascript-lp-solver reckons to about 1e-8. */
const TOLERANCE = 1e-6

/**
 * Problems that javascript-lp-solver 1.0.3 can't take: it is still at netlib-share2b after ten seconds
 * where HiGHS takes a millisecond (measured). The client puts such a question to HiGHS.
 */
const TOO_HARD_FOR_JSLP = ['netlib-share2b']

/** How long a trap of six variables may take before it counts as looping; an answer takes 1 ms. */
const LOOP_LIMIT_MS = 500

const published = problems.filter((problem) => !needsIntegers(problem))
const jslp = await stoppableJslp()
afterAll(() => jslp.close())

test('the published problems are all there but the one that needs whole numbers', () => {
  expect(problems.length).toBe(17)
  expect(problems.filter(needsIntegers).map(({ name }) => name)).toEqual(['williams-food-2'])
})

describe('HiGHS reaches the published optimum of', () => {
  for (const problem of published) {
    test(`${problem.name}: ${problem.source}`, () => {
      expectOptimum(highs(programOf(problem)), problem)
    })
  }
})

describe('javascript-lp-solver reaches the published optimum of', () => {
  for (const problem of published.filter(({ name }) => !TOO_HARD_FOR_JSLP.includes(name))) {
    test(`${problem.name}: ${problem.source}`, async () => {
      const outcome = await jslp.ask((thread) => thread.program(programOf(problem)))
      if (outcome === 'no answer') throw new Error('The thread had to be stopped')
      expectOptimum(outcome.answer, problem)
    })
  }
})

describe('HiGHS tells the truth about every trap', () => {
  test.for(traps)('$name', (trap) => {
    const outcome = highs(programOf(trap))
    if (trap.truth.status === 'infeasible') expect(outcome).toEqual({ status: 'infeasible' })
    else expectPoint(outcome, programOf(trap), leastOf(trap, trap.truth.optimum ?? NaN))
  })
})

describe('javascript-lp-solver gives no values where there is no answer', () => {
  const infeasible = traps.filter(({ name }) => name.startsWith('infeasible'))

  test('there are three such traps', () => {
    expect(infeasible.length).toBe(3)
  })

  test.for(infeasible)('$name', (trap) => {
    expect(solveWithJslp(programOf(trap))).toEqual({ status: 'infeasible' })
  })
})

describe('javascript-lp-solver never contradicts the truth of a trap that makes it loop', () => {
  const looping = traps.filter(({ name }) => name.startsWith('cycle'))
  test.for(looping)('$name', async (trap) => {
    const outcome = await jslp.ask((thread) => thread.program(programOf(trap)), LOOP_LIMIT_MS)
    if (outcome === 'no answer') return expect(await jslpStillAnswers()).toBe(-36)
    if (trap.truth.status === 'infeasible') return expect(outcome.answer.status).toBe('infeasible')
    expectPoint(outcome.answer, programOf(trap), leastOf(trap, trap.truth.optimum ?? NaN))
  })
})

describe.for([
  ['HiGHS', highs],
  ['javascript-lp-solver', solveWithJslp],
] as const)('%s', ([, solve]) => {
  const ofOne = (cost: number, lower: number, upper: number, rows: LinearRow[] = []) =>
    solve({ cost: [cost], lower: [lower], upper: [upper], rows })

  test('calls a program without a bound unbounded', () => {
    expect(ofOne(-1, 0, Infinity).status).toBe('unbounded')
  })

  test('finds that a bound below its own start has no answer', () => {
    expect(ofOne(-1, 5, 4)).toEqual({ status: 'infeasible' })
  })

  test('starts a variable at a lower bound below 0', () => {
    const row = { lower: -2, upper: Infinity, coefficients: [1] }
    expect(ofOne(1, -3, 8, [row])).toEqual({ status: 'optimal', point: [-2], objective: -2 })
  })

  test('lets a variable without bounds go below 0', () => {
    const row = { lower: -7, upper: -4, coefficients: [1] }
    expect(ofOne(1, -Infinity, Infinity, [row])).toMatchObject({ objective: -7 })
  })

  test('refuses a row that asks something of nothing', () => {
    const row = { lower: 5, upper: Infinity, coefficients: [0] }
    expect(ofOne(-1, 0, 100, [row])).toEqual({ status: 'infeasible' })
  })
})

function expectOptimum(outcome: ProgramOutcome, problem: Problem): void {
  const optimum = problem.optimum - problem.objectiveOffset
  expectPoint(outcome, programOf(problem), leastOf(problem, optimum))
}

/** A best value as the least cost that programs have. */
function leastOf({ sense }: Problem | Trap, optimum: number): number {
  return sense === 'min' ? optimum : -optimum
}

/** The objective is right, it is what the point comes to, and the point keeps every bound and row. */
function expectPoint(outcome: ProgramOutcome, program: LinearProgram, optimum: number): void {
  if (outcome.status !== 'optimal') throw new Error(`The outcome is ${outcome.status}`)
  const { point, objective } = outcome
  const sum = (values: ArrayLike<number>) =>
    point.reduce((total, one, at) => total + one * (values[at] ?? NaN), 0)
  expect(objective).toSatisfy(near(optimum), `the optimum ${optimum}`)
  expect(sum(program.cost)).toSatisfy(near(optimum), `the value of the point, ${optimum}`)
  point.forEach((one, at) => {
    const [lower, upper] = [program.lower[at] ?? NaN, program.upper[at] ?? NaN]
    expect(one).toSatisfy(within(lower, upper), `variable ${at} in ${lower} to ${upper}`)
  })
  program.rows.forEach(({ coefficients, lower, upper }, row) => {
    expect(sum(coefficients)).toSatisfy(within(lower, upper), `row ${row} in ${lower} to ${upper}`)
  })
}

function near(expected: number) {
  return (value: number) =>
    Math.abs(value - expected) <= TOLERANCE * Math.max(1, Math.abs(expected))
}

function within(lower: number, upper: number) {
  const slack = (limit: number) =>
    Number.isFinite(limit) ? TOLERANCE * Math.max(1, Math.abs(limit)) : 0
  return (value: number) => value >= lower - slack(lower) && value <= upper + slack(upper)
}

/** Whether the thread that follows a stopped one works: the most of wyndor is 36. */
async function jslpStillAnswers(): Promise<number> {
  const wyndor = published.find(({ name }) => name === 'wyndor')
  if (!wyndor) throw new Error('The problem wyndor is missing')
  const outcome = await jslp.ask((thread) => thread.program(programOf(wyndor)))
  if (outcome === 'no answer' || outcome.answer.status !== 'optimal') return NaN
  return outcome.answer.objective
}
