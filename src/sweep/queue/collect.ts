import { dirname, resolve } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { Queue } from 'bullmq'
import { type Beginning, withSweep } from '../begin'
import { briefTextsIn } from '../brief-text'
import type { SweepOrder } from '../local'
import { runSweep, type SweepOutcome } from '../run-sweep'
import { Asker } from './asker'
import { type Connection, connected, orStopped } from './connection'
import {
  BATCHES_ON_SERVER,
  EVENTS_KEPT,
  type LinesJob,
  linesOfJob,
  type LinesResult,
  QUEUE,
} from './jobs'
import { startWatch } from './watch'

/**
 * Runs a sweep on the workers of a queue: puts batches of lines on the server, no more than
 * `BATCHES_ON_SERVER` ahead of what is written, and collects the answers in the order of the lines.
 */
export async function sweepThroughQueue(order: SweepOrder, url: string): Promise<SweepOutcome> {
  const server = await connected(url, (text) => order.meter.note(text))
  try {
    return await withSweep(order, (beginning) => collect(order, beginning, server))
  } finally {
    server.end()
  }
}

async function collect(
  order: SweepOrder,
  beginning: Beginning,
  server: Connection,
): Promise<SweepOutcome> {
  const { connection } = server
  const queue = new Queue<LinesJob, LinesResult>(QUEUE, {
    connection,
    streams: { events: { maxLen: EVENTS_KEPT } },
  })
  queue.on('error', server.heard)
  const texts = briefTextsIn(dirname(resolve(order.input)))
  const asker = new Asker(queue, server, beginning.sweep, texts)
  const watch = startWatch(queue, order.meter)
  const stop = AbortSignal.any([order.stop, server.gone])
  try {
    await orStopped(asker.ready(), stop)
    return await runSweep({
      ...order,
      stop,
      beginning,
      width: BATCHES_ON_SERVER,
      size: linesOfJob,
      answer: (batch) => asker.ask(batch),
      written: async (batch) => {
        watch.heard()
        await orStopped(asker.forget(batch), stop)
      },
    })
  } finally {
    watch.end()
    // A server that is gone can't be taken leave of.
    if (!server.gone.aborted) await Promise.race([closed(asker, queue), wait(LEAVE_MS)])
  }
}

/** How long taking leave of the server may take, ms. */
const LEAVE_MS = 2_000

async function closed(asker: Asker, queue: Queue<LinesJob, LinesResult>): Promise<void> {
  await asker.close()
  await queue.close()
}
