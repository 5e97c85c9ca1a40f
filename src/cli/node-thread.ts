import { Worker } from 'node:worker_threads'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import type { Library } from '../data/library'
import type { SolverThread } from '../worker/client'

/**
 * Starts a solving thread beside the command line, which lasts until it is terminated. It has the library
 * itself; oils of a maker's own go over with the start.
 */
export function startNodeThread(library: Library): SolverThread {
  const workerData = [...library.oils.values()].filter(({ own }) => own !== undefined)
  const worker = new Worker(new URL('./solver-thread.js', import.meta.url), { workerData })
  return {
    endpoint: nodeEndpoint(worker),
    terminate: () => void worker.terminate(),
    onError: (report) => {
      worker.on('error', report)
      worker.on('exit', () => report(new Error('The solving thread stopped')))
    },
  }
}
