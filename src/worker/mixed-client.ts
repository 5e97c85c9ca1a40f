import { type Remote, wrap } from 'comlink'
import type { MixedOutcome, MixedProgram } from '../domain/cost/mixed'
import type { MixedService } from './mixed.worker'

/** Solves mixed programs in a thread of its own, which is started by the first question. */
export class MixedClient {
  #worker: Worker | undefined
  #service: Remote<MixedService> | undefined

  /** Solves a program. An aborted question ends the thread; the next one starts another. */
  async solve(
    program: MixedProgram,
    gap: number,
    seconds: number,
    signal: AbortSignal,
  ): Promise<MixedOutcome> {
    const service = (this.#service ??= this.#start())
    const ended = new Promise<never>((_, reject) => {
      this.#worker?.addEventListener('error', ({ message }) => {
        this.close()
        reject(new Error(message || 'The buying thread stopped'))
      })
      signal.addEventListener('abort', () => {
        this.close()
        reject(new Error('Overtaken'))
      })
    })
    return Promise.race([service.solve(program, gap, seconds), ended])
  }

  close(): void {
    this.#worker?.terminate()
    this.#worker = undefined
    this.#service = undefined
  }

  #start(): Remote<MixedService> {
    this.#worker = new Worker(new URL('./mixed.worker.ts', import.meta.url), { type: 'module' })
    return wrap<MixedService>(this.#worker)
  }
}
