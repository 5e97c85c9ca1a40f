import type { SolverThread } from './client'

/** Starts the solving thread of the page. */
export function startPageThread(): SolverThread {
  const worker = new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' })
  return {
    endpoint: worker,
    terminate: () => worker.terminate(),
    onError: (report) =>
      worker.addEventListener('error', (event) =>
        report(new Error(event.message || 'The solving thread stopped')),
      ),
  }
}
