import type { Queue } from 'bullmq'
import type { Meter } from '../progress'

/** After so long without an answer it is looked whether there is anybody to give one; milliseconds. */
const PATIENCE_MS = 10_000

/** Says so where answers fail to come since no worker is there. */
export function startWatch(queue: Queue, meter: Meter): { heard(): void; end(): void } {
  let heardMs = performance.now()
  const timer = setInterval(() => {
    if (performance.now() - heardMs < PATIENCE_MS) return
    heardMs = performance.now()
    queue.getWorkersCount().then(
      (count) => {
        if (count === 0)
          meter.note(
            'No worker is there. Start one on any machine: barwright sweep --work redis://…',
          )
      },
      // That the server can't be asked is told by the connection.
      () => undefined,
    )
  }, PATIENCE_MS)
  return {
    heard: () => {
      heardMs = performance.now()
    },
    end: () => clearInterval(timer),
  }
}
