import { Worker } from 'node:worker_threads'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import type { SolverThread } from '../worker/client'

/** Starts a solving thread beside the command line, which lasts until it is terminated. */
export function startNodeThread(): SolverThread {
  const worker = new Worker(new URL('./solver-thread.js', import.meta.url))
  return {
    endpoint: nodeEndpoint(worker),
    terminate: () => void worker.terminate(),
    onError: (report) => {
      worker.on('error', report)
      worker.on('exit', () => report(new Error('The solving thread stopped')))
    },
  }
}
