import { dirname, resolve } from 'node:path'
import { beginSweep } from './begin'
import { startPool } from './pool'
import type { Meter } from './progress'
import { runSweep, type SweepOutcome } from './run-sweep'

/** What is asked of a sweep. */
export interface SweepOrder {
  readonly input: string
  readonly out: string
  readonly restart: boolean
  readonly meter: Meter
}

/** Batches in hand for each thread: one at work and some waiting, so that none runs dry. */
const BATCHES_PER_THREAD = 4

/** Runs a sweep on so many threads of this machine. */
export async function sweepHere(order: SweepOrder, threads: number): Promise<SweepOutcome> {
  const beginning = await beginSweep(order.input, order.out, order.restart)
  const pool = startPool(threads)
  const briefs = dirname(resolve(order.input))
  try {
    return await runSweep({
      ...order,
      beginning,
      width: threads * BATCHES_PER_THREAD,
      answer: ({ firstLine, bytes }) => pool.answer({ firstLine, bytes, briefs }),
    })
  } finally {
    await pool.close()
  }
}
