import type { Library } from '../data/library'
import type { SolverThread } from './client'

/**
 * Starts the solving thread of the page; the library goes over with it, so that it is loaded once. What oils
 * of one's own are in it stays for as long as the thread runs.
 */
export function startPageThread(library: Library): SolverThread {
  const worker = new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' })
  worker.postMessage(library)
  return {
    endpoint: worker,
    terminate: () => worker.terminate(),
    onError: (report) =>
      worker.addEventListener('error', (event) =>
        report(new Error(event.message || 'The solving thread stopped')),
      ),
  }
}
