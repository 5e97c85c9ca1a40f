import { MS_PER_SECOND } from '../domain/units'
import { addCounts, type Answered, type Batch, type Counts, NO_COUNTS } from './batch'
import type { Beginning } from './begin'
import { SweepRefused, SweepStopped } from './faults'
import { type OpenFile, type SweepFiles, writeAll } from './files'
import { inOrder } from './in-order'
import { batchesOf, type BatchSize } from './lines'
import { type Meter, Pace } from './progress'

/** What a run of a sweep needs. */
export interface SweepRun {
  readonly files: SweepFiles
  readonly input: string
  readonly beginning: Beginning
  /** Lines in a batch. */
  readonly size: BatchSize
  /** Batches in hand at once. */
  readonly width: number
  readonly answer: (batch: Batch) => Promise<Answered>
  /** Called when the answers to a batch are written. */
  readonly written?: (batch: Batch) => Promise<void>
  readonly meter: Meter
  /** Stops the run; its reason is told. */
  readonly stop: AbortSignal
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

/** What is written goes to the disk at least so often, ms: a power cut costs no more than that. */
const SYNC_MS = 2_000

/**
 * Answers the lines from where the sweep begins, in the order of the lines, beside the output; when all
 * are on the disk they take its name, so that an output is there as a whole or not at all.
 */
export async function runSweep(run: SweepRun): Promise<SweepOutcome> {
  const { place, isDone } = run.beginning
  const startMs = performance.now()
  try {
    const done = isDone ? { lines: place.lines, counts: NO_COUNTS } : await answerAll(run)
    return { ...done, before: place.lines, seconds: (performance.now() - startMs) / MS_PER_SECOND }
  } catch (error) {
    throw error instanceof SweepRefused ? error : stopped(error)
  } finally {
    run.meter.end()
  }
}

async function answerAll(run: SweepRun): Promise<{ lines: number; counts: Counts }> {
  const { files, beginning } = run
  const file = await files.open(beginning.part, 'append')
  let done
  try {
    done = await answerInto(file, run)
    await file.sync()
  } finally {
    await file.close()
  }
  await beginning.checkInputs()
  await files.rename(beginning.part, beginning.out)
  await files.syncFolderOf(beginning.out)
  return done
}

async function answerInto(
  file: OpenFile,
  run: SweepRun,
): Promise<{ lines: number; counts: Counts }> {
  const { place, inputBytes } = run.beginning
  const pace = new Pace(place, inputBytes, () => performance.now())
  let [lines, counts, syncedMs] = [place.lines, NO_COUNTS, performance.now()]
  const handOver = async (batch: Batch, answered: Answered) => {
    run.stop.throwIfAborted()
    await writeAll(file, answered.bytes)
    if (performance.now() - syncedMs > SYNC_MS) {
      await file.sync()
      syncedMs = performance.now()
    }
    await run.written?.(batch)
    lines += batch.count
    counts = addCounts(counts, answered.counts)
    run.meter.show(pace.at(batch.endOffset, lines))
  }
  let writing: Promise<void> = Promise.resolve()
  const aborted = abortOf(run.stop)
  try {
    await Promise.race([
      inOrder(
        batchesOf(run.files, run.input, place, run.size),
        run.width,
        run.answer,
        (batch, answered) => (writing = handOver(batch, answered)),
      ),
      aborted.comes,
    ])
  } finally {
    aborted.leaveOff()
    // What is being written is written to its end before the file is closed.
    await writing.catch(() => undefined)
  }
  return { lines, counts }
}

/** Rejects when a signal is given, with its reason. */
function abortOf(signal: AbortSignal): { readonly comes: Promise<never>; leaveOff(): void } {
  let leaveOff: () => void = () => undefined
  const comes = new Promise<never>((_, reject) => {
    const heard = () => {
      reject(reasonOf(signal))
    }
    if (signal.aborted) heard()
    signal.addEventListener('abort', heard)
    leaveOff = () => signal.removeEventListener('abort', heard)
  })
  comes.catch(() => undefined)
  return { comes, leaveOff: () => leaveOff() }
}

function reasonOf({ reason }: AbortSignal): Error {
  return reason instanceof Error ? reason : new Error(String(reason))
}

function stopped(error: unknown): SweepStopped {
  if (error instanceof SweepStopped) return error
  const reason = error instanceof Error ? error.message : String(error)
  return new SweepStopped(`The sweep had to stop: ${reason}.`, { cause: error })
}
