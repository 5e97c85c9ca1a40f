import { setTimeout as wait } from 'node:timers/promises'
import { Worker } from 'bullmq'
import { SweepStopped } from '../faults'
import { startPool } from '../pool'
import { connected } from './connection'
import { type LinesJob, type LinesResult, LOOK_MS, MOST_DEATHS, QUEUE, SILENCE_MS } from './jobs'

/** What a worker is started with. */
export interface WorkOrder {
  readonly url: string
  readonly threads: number
  /** Tells a line of what goes on. */
  readonly tell: (line: string) => void
  /** Asks it to end: lines in hand are finished first. */
  readonly stop: AbortSignal
}

/** How long lines in hand may take to be handed in at the end, ms; a search under rules takes seconds. */
const LAST_LINES_MS = 30_000

/**
 * Answers lines from the queue until it is asked to end, or until the server has been gone for too long,
 * which throws SweepStopped. The lines are worked on in threads, so that the worker can be heard of all the
 * time; those in hand are finished before it ends, unless there is no server to hand them to.
 */
export async function workOnQueue({
  url,
  threads,
  tell,
  stop,
}: WorkOrder): Promise<{ batches: number }> {
  const server = await connected(url, tell)
  const pool = startPool(threads)
  let batches = 0
  const worker = new Worker<LinesJob, LinesResult>(
    QUEUE,
    async ({ data: { text, ...rest } }) => {
      const { bytes, counts, tookMs } = await pool.answer({
        ...rest,
        bytes: new TextEncoder().encode(text),
      })
      return { text: new TextDecoder().decode(bytes), counts, tookMs }
    },
    {
      connection: server.connection,
      concurrency: threads + 1,
      lockDuration: SILENCE_MS,
      stalledInterval: LOOK_MS,
      maxStalledCount: MOST_DEATHS,
    },
  )
  worker.on('completed', () => batches++)
  worker.on('error', server.heard)
  try {
    await worker.waitUntilReady()
    tell(`Working on ${threads} threads; Ctrl-C ends it.`)
    await aborted(AbortSignal.any([stop, server.gone]))
    const isThere = !server.gone.aborted && server.connection.status === 'ready'
    if (isThere) await Promise.race([worker.close(), wait(LAST_LINES_MS)])
    else await Promise.race([worker.close(true), wait(0)])
    if (server.gone.aborted) throw withoutServer(server.gone.reason as SweepStopped)
  } finally {
    await pool.destroy()
    server.end()
  }
  return { batches }
}

/** A worker writes nothing: what it was at is asked for again by the sweep. */
function withoutServer({ reason }: SweepStopped): SweepStopped {
  return new SweepStopped(reason, {}, 'No line is lost; start the worker again when it is there.')
}

function aborted(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve()
    signal.addEventListener('abort', () => resolve(), { once: true })
  })
}
