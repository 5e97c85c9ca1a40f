import { Script } from 'node:vm'
import type { Library } from '../data/library'
import type { AskOptions, Question } from '../worker/client'
import { createService } from '../worker/service'

/** Who answers questions one by one. */
export interface Solver {
  ask<T>(question: Question<T>, options?: AskOptions): Promise<T>
}

/** How long javascript-lp-solver may take before it counts as looping. */
const LOOPING_MS = 2_000

/** Thrown where a question needs HiGHS, which is asked in a thread. */
class NeedsHighs extends Error {
  override readonly name = 'NeedsHighs'
}

/**
 * Answers in this process, which spares the start of a thread. Work that takes longer than its limit is
 * ended; where javascript-lp-solver loops, or its answer is not sound, `elsewhere` is asked for HiGHS.
 */
export function solverHere(library: Library, elsewhere: Solver): Solver {
  const service = createService(library, () => Promise.reject(new NeedsHighs()))
  return {
    ask: async (question, options = {}) => {
      const { solver = 'javascript-lp-solver', limitMs = LOOPING_MS } = options
      if (solver === 'highs') return elsewhere.ask(question, options)
      try {
        return await inTime(() => question(service, solver), limitMs)
      } catch (error) {
        if (solver !== 'javascript-lp-solver') throw error
        if (!(error instanceof NeedsHighs) && !isTooLong(error)) throw error
        return elsewhere.ask(question, { signal: options.signal, solver: 'highs' })
      }
    },
  }
}

/**
 * What a function returns, called so that it is ended after some milliseconds, even in a loop without end.
 * Of a function that returns a promise this holds for all it does before it first waits.
 */
function inTime<T>(work: () => T, limitMs: number): T {
  let result: { readonly value: T } | undefined
  const global: Record<symbol, unknown> = globalThis
  global[WORK] = () => (result = { value: work() })
  try {
    CALL.runInThisContext({ timeout: limitMs })
  } finally {
    global[WORK] = undefined
  }
  if (!result) throw new Error('The work was not done')
  return result.value
}

/** Where the script that can be ended finds its work: it sees nothing but what is global. */
const WORK = Symbol.for('barwright.work')
const CALL = new Script(`globalThis[Symbol.for('barwright.work')]()`)

function isTooLong(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ERR_SCRIPT_EXECUTION_TIMEOUT'
}
