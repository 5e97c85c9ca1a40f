import { type FileHandle, open } from 'node:fs/promises'
import { addCounts, type Answered, type Batch, type Counts, NO_COUNTS } from './batch'
import type { Beginning } from './begin'
import { SweepStopped } from './faults'
import { inOrder } from './in-order'
import { batchesOf, type BatchSize } from './lines'
import { type Meter, Pace } from './progress'

/** What a run of a sweep needs. */
export interface SweepRun {
  readonly input: string
  readonly out: string
  readonly beginning: Beginning
  /** Lines in a batch. */
  readonly size: BatchSize
  /** Batches in hand at once. */
  readonly width: number
  readonly answer: (batch: Batch) => Promise<Answered>
  /** Called when the answers to a batch are written. */
  readonly written?: (batch: Batch) => Promise<void>
  readonly meter: Meter
}

/** What a run came to. */
export interface SweepOutcome {
  /** Lines of the input, and so of the output. */
  readonly lines: number
  /** Lines that earlier runs had answered. */
  readonly before: number
  /** Of this run. */
  readonly counts: Counts
  readonly seconds: number
}

/** Answers the lines from where the sweep begins, and appends the answers in the order of the lines. */
export async function runSweep(run: SweepRun): Promise<SweepOutcome> {
  const { place, inputBytes } = run.beginning
  const pace = new Pace(place, inputBytes, () => performance.now())
  const startMs = performance.now()
  let [lines, counts] = [place.lines, NO_COUNTS]
  const out = await open(run.out, 'a')
  try {
    await inOrder(
      batchesOf(run.input, place, run.size),
      run.width,
      run.answer,
      async (batch, answered) => {
        await writeAll(out, answered.bytes)
        await run.written?.(batch)
        lines += batch.count
        counts = addCounts(counts, answered.counts)
        run.meter.show(pace.at(batch.endOffset, lines))
      },
    )
    await out.datasync()
  } catch (error) {
    throw stopped(error)
  } finally {
    await out.close()
    run.meter.end()
  }
  return { lines, before: place.lines, counts, seconds: (performance.now() - startMs) / 1000 }
}

function stopped(error: unknown): SweepStopped {
  if (error instanceof SweepStopped) return error
  const reason = error instanceof Error ? error.message : String(error)
  return new SweepStopped(`The sweep had to stop: ${reason}.`, { cause: error })
}

async function writeAll(file: FileHandle, bytes: Uint8Array): Promise<void> {
  for (let done = 0; done < bytes.length;) {
    const { bytesWritten } = await file.write(bytes, done)
    done += bytesWritten
  }
}
