import { describe, expect, test } from 'vitest'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import type { Outcome } from '../../../../src/domain/lp/simplex/answer'
import { programOf, readCases, type Problem, type Trap } from './case-files'
import { faultsOfInfeasibility, faultsOfOptimum } from './proofs'

/** Of the verified optimum; the brief of the reference collection asks for 1e-9. */
const RELATIVE = 1e-9

const PROBLEMS = readCases<Problem>('problems')
const LINEAR = PROBLEMS.filter((problem) => !problem.variables.some(({ integer }) => integer))
const TRAPS = readCases<Trap>('traps')

function relativeGap(value: number, truth: number): number {
  return Math.abs(value - truth) / Math.max(1, Math.abs(truth))
}

function objectiveOf(outcome: Outcome, sense: 'min' | 'max'): number {
  if (outcome.status !== 'optimal') throw new Error(`outcome is ${outcome.status}`)
  return sense === 'min' ? outcome.objective : -outcome.objective
}

describe('published problems', () => {
  test('sixteen linear problems are on file, and one with integers', () => {
    expect(LINEAR).toHaveLength(16)
    expect(PROBLEMS).toHaveLength(17)
  })

  test.each(LINEAR)('$name is solved to its optimum $optimum ($source)', (problem) => {
    const program = programOf(problem)
    const outcome = new Simplex(program).solve()
    expect(relativeGap(objectiveOf(outcome, problem.sense), problem.optimum)).toBeLessThan(RELATIVE)
    if (outcome.status === 'optimal') expect(faultsOfOptimum(program, outcome)).toEqual([])
  })
})

describe('inputs on which other solvers loop, give up or answer with nonsense', () => {
  test('nine traps are on file', () => {
    expect(TRAPS).toHaveLength(9)
  })

  test.each(TRAPS)('$name ends with the status $truth.status', (trap) => {
    const program = programOf(trap)
    const outcome = new Simplex(program).solve()
    expect(outcome.status).toBe(trap.truth.status)
    if (outcome.status === 'infeasible') {
      expect(faultsOfInfeasibility(program, outcome)).toEqual([])
      expect(outcome).not.toHaveProperty('x')
      expect(outcome).not.toHaveProperty('objective')
    }
    if (outcome.status === 'optimal') {
      const { optimum } = trap.truth
      expect(relativeGap(objectiveOf(outcome, trap.sense), optimum ?? NaN)).toBeLessThan(RELATIVE)
      expect(faultsOfOptimum(program, outcome)).toEqual([])
    }
  })
})
