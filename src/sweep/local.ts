import { dirname, resolve } from 'node:path'
import { beginSweep } from './begin'
import { startPool } from './pool'
import type { Meter } from './progress'
import { FittingBatch } from './fitting-batch'
import { runSweep, type SweepOutcome } from './run-sweep'

/** What is asked of a sweep. */
export interface SweepOrder {
  readonly input: string
  readonly out: string
  readonly restart: boolean
  readonly meter: Meter
}

/** Batches in hand for each thread: one at work and some waiting, so that none runs dry. */
const BATCHES_PER_THREAD = 3

/** Runs a sweep on so many threads of this machine. */
export async function sweepHere(order: SweepOrder, threads: number): Promise<SweepOutcome> {
  const beginning = await beginSweep(order.input, order.out, order.restart)
  const pool = startPool(threads)
  const briefs = dirname(resolve(order.input))
  const lines = new FittingBatch()
  try {
    return await runSweep({
      ...order,
      beginning,
      width: threads * BATCHES_PER_THREAD,
      size: () => lines.perBatch,
      answer: async ({ firstLine, count, bytes }) => {
        const answered = await pool.answer({ firstLine, bytes, briefs })
        lines.took(count, answered.tookMs)
        return answered
      },
    })
  } finally {
    await pool.close()
  }
}
