import { type Endpoint, wrap } from 'comlink'
import type { SolverName, SolverService } from './protocol'

/** Lets a function go over to the thread, to be called from there. */
export { proxy } from 'comlink'

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

/** A thread is not ended for a question called off before it has worked on it for so long. */
const PATIENCE_MS = 400
/** How long a question that was called off may still take to stop by itself. */
const STOPPING_MS = 150

/** How a question is asked. */
export interface AskOptions {
  /**
   * Calls the question off: it rejects with CalledOff, unless the answer comes right away. A thread that
   * does not stop by itself is ended, and the next question starts another.
   */
  readonly signal?: AbortSignal | undefined
  /** How long the answer may take, whichever solver gives it; each has its own limit if left out. */
  readonly limitMs?: number | undefined
  /** Who is to answer this one question, in the place of the client's own solver. */
  readonly solver?: SolverName | undefined
}

/** One question to the service, with the solver to use. */
export type Question<T> = (service: SolverService, solver: SolverName) => Promise<T>

/** A thread at work; `ended` rejects when it dies or is ended, with the reason. */
interface Running {
  readonly service: SolverService
  readonly ended: Promise<never>
  end(reason: Error): void
}

/**
 * Asks a solving thread, one question at a time. javascript-lp-solver is known to loop for ever on rare
 * programs; a thread that does not answer in time is ended and the question goes to HiGHS in a new one.
 * Errors, dead threads and a closed client reject, so that no question hangs.
 */
export class SolverClient {
  #running: Running | undefined
  /** What the thread at work was made of. */
  #runningOf: unknown
  #tail: Promise<unknown> = Promise.resolve()
  #closed = false

  constructor(
    private readonly spawn: () => SolverThread,
    private readonly solver: SolverName = 'barwright',
    private readonly firstLimitMs = FIRST_LIMIT_MS,
    /** What a thread is made of: once this is another, the next question goes to another thread. */
    private readonly madeOf: () => unknown = () => undefined,
  ) {}

  /** The answer to a question, after all earlier ones are answered. */
  ask<T>(question: Question<T>, options: AskOptions = {}): Promise<T> {
    const answer = this.#tail.then(() => this.#answer(question, options))
    this.#tail = answer.catch(() => undefined)
    return answer
  }

  /** Ends the thread for good; what is not answered yet, and what is asked later, rejects. */
  close(): void {
    this.#closed = true
    this.#running?.end(new SolverClosed('The solver was closed'))
  }

  async #answer<T>(question: Question<T>, options: AskOptions): Promise<T> {
    const { signal, limitMs = LAST_LIMIT_MS, solver = this.solver } = options
    if (solver !== 'javascript-lp-solver') return this.#within(question, solver, limitMs, signal)
    const firstLimitMs = options.limitMs ?? this.firstLimitMs
    try {
      return await this.#within(question, solver, firstLimitMs, signal)
    } catch (error) {
      if (!(error instanceof TookTooLong)) throw error
      return this.#within(question, 'highs', limitMs, signal)
    }
  }

  async #within<T>(
    question: Question<T>,
    solver: SolverName,
    limitMs: number,
    signal: AbortSignal | undefined,
  ): Promise<T> {
    if (signal?.aborted) throw new CalledOff('The question was called off')
    if (this.#runningOf !== this.madeOf())
      this.#running?.end(new Outdated('The oils are others now'))
    const running = this.#running ?? (await this.#start())
    return inTime(running, question(running.service, solver), limitMs, signal)
  }

  async #start(): Promise<Running> {
    if (this.#closed) throw new SolverClosed('The solver was closed')
    this.#runningOf = this.madeOf()
    const running = runningThread(this.spawn(), () => {
      if (this.#running === running) this.#running = undefined
    })
    this.#running = running
    await inTime(running, running.service.ready(), LAST_LIMIT_MS)
    return running
  }
}

function runningThread(thread: SolverThread, onEnd: () => void): Running {
  let fail: (reason: Error) => void = () => undefined
  const ended = new Promise<never>((_, reject) => {
    fail = reject
  })
  // Whoever waits for an answer hears of the end; at other times nobody waits, and that is no fault.
  ended.catch(() => undefined)
  const end = (reason: Error) => {
    thread.terminate()
    onEnd()
    fail(reason)
  }
  thread.onError(end)
  return { service: wrap<SolverService>(thread.endpoint), ended, end }
}

/** The answer of a thread; one that takes longer, or is called off and goes on, is ended. */
async function inTime<T>(
  running: Running,
  answer: Promise<T>,
  limitMs: number,
  signal?: AbortSignal,
): Promise<T> {
  const start = performance.now()
  const late = () => running.end(new TookTooLong(`No answer within ${limitMs} ms`))
  let timer = setTimeout(late, limitMs)
  const callOff = () => {
    const patienceMs = PATIENCE_MS - (performance.now() - start)
    clearTimeout(timer)
    timer = setTimeout(
      () => running.end(new CalledOff('The question was called off')),
      Math.max(STOPPING_MS, patienceMs),
    )
  }
  if (signal?.aborted) callOff()
  signal?.addEventListener('abort', callOff)
  try {
    return await Promise.race([answer, running.ended])
  } finally {
    signal?.removeEventListener('abort', callOff)
    clearTimeout(timer)
  }
}

/** Thrown when a question was called off before it had an answer. */
export class CalledOff extends Error {
  override readonly name = 'CalledOff'
}

/** Thrown when a thread did not answer in time. */
export class TookTooLong extends Error {
  override readonly name = 'TookTooLong'
}

/** Ends a thread that nobody asks any more. */
class Outdated extends Error {
  override readonly name = 'Outdated'
}

/** Thrown when the client was closed before it had the answer. */
export class SolverClosed extends Error {
  override readonly name = 'SolverClosed'
}
