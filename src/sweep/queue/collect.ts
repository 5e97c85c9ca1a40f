import { dirname, resolve } from 'node:path'
import { Queue } from 'bullmq'
import { beginSweep } from '../begin'
import { briefTextsIn } from '../brief-text'
import type { SweepOrder } from '../local'
import { runSweep, type SweepOutcome } from '../run-sweep'
import { Asker } from './asker'
import { connected } from './connection'
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
  const connection = await connected(url)
  const beginning = await beginSweep(order.input, order.out, order.restart)
  const queue = new Queue<LinesJob, LinesResult>(QUEUE, {
    connection,
    streams: { events: { maxLen: EVENTS_KEPT } },
  })
  const texts = briefTextsIn(dirname(resolve(order.input)))
  const asker = new Asker(queue, connection, beginning.sweep, texts)
  const watch = startWatch(queue, order.meter)
  try {
    await asker.ready()
    return await runSweep({
      ...order,
      beginning,
      width: BATCHES_ON_SERVER,
      size: linesOfJob,
      answer: (batch) => asker.ask(batch),
      written: async (batch) => {
        watch.heard()
        await asker.forget(batch)
      },
    })
  } finally {
    watch.end()
    await asker.close()
    await queue.close()
    connection.disconnect()
  }
}
