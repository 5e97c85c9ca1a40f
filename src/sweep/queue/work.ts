import { once } from 'node:events'
import { Worker } from 'bullmq'
import { startPool } from '../pool'
import { connected } from './connection'
import { type LinesJob, type LinesResult, LOOK_MS, MOST_DEATHS, QUEUE, SILENCE_MS } from './jobs'

/**
 * Answers lines from the queue until the process is asked to end. The lines are worked on in threads, so
 * that the worker can be heard of all the time; those in hand are finished before it ends.
 */
export async function workOnQueue(url: string, threads: number): Promise<{ batches: number }> {
  const connection = await connected(url)
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
      connection,
      concurrency: threads + 1,
      lockDuration: SILENCE_MS,
      stalledInterval: LOOK_MS,
      maxStalledCount: MOST_DEATHS,
    },
  )
  worker.on('completed', () => batches++)
  worker.on('error', (error) => process.stderr.write(`${error.message}\n`))
  await worker.waitUntilReady()
  process.stderr.write(`Working on ${threads} threads; Ctrl-C ends it.\n`)
  await Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')])
  await worker.close()
  await pool.close()
  connection.disconnect()
  return { batches }
}
