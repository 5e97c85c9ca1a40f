import { wrap } from 'comlink'
import { buildThread } from './build-thread'
import type { JslpThread } from './jslp-thread'

/** How long one question may take; an answer usually takes a millisecond. */
const LIMIT_MS = 5_000

/** An answer, or word that there is none: the solver was still at it when its time was over. */
export type Outcome<T> = { readonly answer: T } | 'no answer'

/** javascript-lp-solver in a thread that is ended when it loops. */
export interface StoppableJslp {
  ask<T>(question: (jslp: JslpThread) => Promise<T>, limitMs?: number): Promise<Outcome<T>>
  close(): Promise<void>
}

export async function stoppableJslp(): Promise<StoppableJslp> {
  const program = await buildThread('./jslp-thread.ts')
  let current: { readonly worker: { terminate(): Promise<number> }; jslp: JslpThread } | undefined
  const started = async () => {
    const thread = program.start()
    const jslp: JslpThread = wrap<JslpThread>(thread.endpoint)
    await jslp.ready()
    return { worker: thread.worker, jslp }
  }
  return {
    async ask(question, limitMs = LIMIT_MS) {
      current ??= await started()
      const answer = question(current.jslp).then((value) => ({ answer: value }))
      const outcome = await Promise.race([answer, after(limitMs)])
      if (outcome !== 'no answer') return outcome
      await current.worker.terminate()
      current = undefined
      return outcome
    },
    async close() {
      await current?.worker.terminate()
      await program.remove()
    },
  }
}

function after(ms: number): Promise<'no answer'> {
  return new Promise((resolve) => {
    setTimeout(() => resolve('no answer'), ms).unref()
  })
}
