import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import { SolverClient } from '../../src/worker/client'
import { type Trap, traps } from '../domain/lp/solvers/lp-cases'
import { trapBrief } from '../domain/lp/solvers/trap-briefs'
import { buildThread, type ThreadProgram } from './build-thread'

/** How long javascript-lp-solver may loop here; an answer over six variables takes 1 ms. */
const LIMIT_MS = 500
/** How long it may take where it answers: only a last stop, a machine may be as slow as it likes. */
const AT_LAST_MS = 60_000

/** Those that javascript-lp-solver 1.0.3 never answers (measured; tests/cases/lp/traps says more). */
const LOOPING = ['cycle-4x5-c', 'cycle-4x6-e', 'cycle-5x4-d', 'cycle-5x6-a', 'cycle-8x6-b']

let program: ThreadProgram
beforeAll(async () => {
  program = await buildThread('./trap-thread.ts')
})
afterAll(() => program.remove())

describe('a brief made of a trap gets the truth, asked as the product asks', () => {
  test.for(traps)('$name', async (trap) => {
    const { answer, exits } = await asked(trap)
    if (trap.truth.status === 'infeasible') {
      expect(answer.status).toBe('infeasible')
      expect(Object.keys(answer).sort()).toEqual(['conflict', 'nearest', 'status'])
    } else {
      if (answer.status !== 'optimal') throw new Error(`The answer is ${answer.status}`)
      expect(answer.goalValue).toBeCloseTo(trap.truth.optimum ?? NaN, 6)
    }
    expect(exits.length).toBe(LOOPING.includes(trap.name) ? 2 : 1)
  })
})

/**
 * The answer to a trap, and how the threads ended that were started for it. The last one ends with the
 * client; this waits for ever where an earlier one was left looping.
 */
async function asked(trap: Trap): Promise<{ answer: Answer; exits: readonly number[] }> {
  const limitMs = LOOPING.includes(trap.name) ? LIMIT_MS : AT_LAST_MS
  const exits: Promise<number>[] = []
  const start = () => {
    const thread = program.start(trap)
    exits.push(new Promise((resolve) => thread.worker.once('exit', resolve)))
    return thread
  }
  const client = new SolverClient(start, 'javascript-lp-solver', limitMs)
  const { brief } = trapBrief(trap)
  const asking = client.ask((service, solver) => service.solve(solver, brief))
  const answer = await asking.finally(() => client.close())
  return { answer, exits: await Promise.all(exits) }
}
