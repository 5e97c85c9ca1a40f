import type { Library } from '../data/library'
import type { AskOptions, Question, SolverClient } from '../worker/client'
import type { Solver } from './solver-here'

/** A solving thread that is loaded and started with the first question. */
export class LazyThread implements Solver {
  #client: SolverClient | undefined

  constructor(private readonly library: Library) {}

  async ask<T>(question: Question<T>, options: AskOptions = {}): Promise<T> {
    return (await this.#started()).ask(question, options)
  }

  close(): void {
    this.#client?.close()
  }

  async #started(): Promise<SolverClient> {
    if (this.#client) return this.#client
    const { SolverClient } = await import('../worker/client')
    const { startNodeThread } = await import('./node-thread')
    // javascript-lp-solver may loop for ever: its client knows how to end it. Others are asked by name.
    return (this.#client = new SolverClient(
      () => startNodeThread(this.library),
      'javascript-lp-solver',
    ))
  }
}
