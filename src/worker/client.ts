import { type Endpoint, wrap } from 'comlink'
import type { SolverName, SolverService } from './protocol'

/** A thread that runs the solver service and can be ended from outside. */
export interface SolverThread {
  readonly endpoint: Endpoint
  terminate(): void
  /** Calls back when the thread dies of an error. */
  onError(report: (error: Error) => void): void
}

/** How long javascript-lp-solver may take before it counts as looping; a usual study takes 0.1 s. */
const FIRST_LIMIT_MS = 2_000
/** How long HiGHS may take, and a thread to start. */
const LAST_LIMIT_MS = 30_000

/** One question to the service, with the solver to use. */
export type Question<T> = (service: SolverService, solver: SolverName) => Promise<T>

/**
 * Asks a solving thread, one question at a time. javascript-lp-solver is known to loop for ever on rare
 * programs; a thread that does not answer in time is ended and the question goes to HiGHS in a new one.
 * Errors and dead threads reject, so that no question hangs.
 */
export class SolverClient {
  #thread: SolverThread | undefined
  #tail: Promise<unknown> = Promise.resolve()

  constructor(
    private readonly spawn: () => SolverThread,
    private readonly solver: SolverName = 'javascript-lp-solver',
    private readonly firstLimitMs = FIRST_LIMIT_MS,
  ) {}

  /** The answer to a question, after all earlier ones are answered. */
  ask<T>(question: Question<T>): Promise<T> {
    const answer = this.#tail.then(() => this.#answer(question))
    this.#tail = answer.catch(() => undefined)
    return answer
  }

  /** Ends the thread. */
  close(): void {
    this.#thread?.terminate()
    this.#thread = undefined
  }

  async #answer<T>(question: Question<T>): Promise<T> {
    if (this.solver === 'highs') return this.#within(question, 'highs', LAST_LIMIT_MS)
    try {
      return await this.#within(question, this.solver, this.firstLimitMs)
    } catch (error) {
      if (!(error instanceof TookTooLong)) throw error
      return this.#within(question, 'highs', LAST_LIMIT_MS)
    }
  }

  async #within<T>(question: Question<T>, solver: SolverName, limitMs: number): Promise<T> {
    const { service, died } = await this.#running()
    return this.#limited(Promise.race([question(service, solver), died]), limitMs)
  }

  #service: { service: SolverService; died: Promise<never> } | undefined

  async #running() {
    if (this.#thread && this.#service) return this.#service
    const thread = this.spawn()
    const died = new Promise<never>((_, reject) => {
      thread.onError((error) => {
        this.close()
        reject(error)
      })
    })
    died.catch(() => undefined)
    const service: SolverService = wrap<SolverService>(thread.endpoint)
    this.#thread = thread
    this.#service = { service, died }
    await this.#limited(Promise.race([service.ready(), died]), LAST_LIMIT_MS)
    return this.#service
  }

  /** The promise's outcome, or TookTooLong with the thread ended. */
  #limited<T>(promise: Promise<T>, limitMs: number): Promise<T> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        this.close()
        reject(new TookTooLong(`No answer within ${limitMs} ms`))
      }, limitMs)
      promise.then(resolve, reject).finally(() => clearTimeout(timer))
    })
  }
}

/** Thrown when a thread did not answer in time. */
export class TookTooLong extends Error {
  override readonly name = 'TookTooLong'
}
