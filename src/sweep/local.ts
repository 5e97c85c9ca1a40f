import { dirname, resolve } from 'node:path'
import { type SweepAsked, withSweep } from './begin'
import { startPool } from './pool'
import type { Meter } from './progress'
import { FittingBatch } from './fitting-batch'
import { runSweep, type SweepOutcome } from './run-sweep'

/** What is asked of a sweep. */
export interface SweepOrder extends SweepAsked {
  readonly meter: Meter
  /** Stops it before its end; what is written stays. */
  readonly stop: AbortSignal
}

/** Batches in hand for each thread: one at work and some waiting, so that none runs dry. */
const BATCHES_PER_THREAD = 3

/** Runs a sweep on so many threads of this machine. */
export function sweepHere(order: SweepOrder, threads: number): Promise<SweepOutcome> {
  return withSweep(order, async (beginning) => {
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
  })
}
