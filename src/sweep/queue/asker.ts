import { type Job, type Queue, QueueEvents } from 'bullmq'
import { briefPathOf } from '../../data/sweep-file'
import type { Answered, Batch, BriefText } from '../batch'
import { SweepStopped } from '../faults'
import type { BriefTexts } from '../line-solver'
import type { Connection } from './connection'
import { jobOptions, type LinesJob, type LinesResult, QUEUE } from './jobs'

/** How long to wait for word of a job before looking for oneself; milliseconds. */
const LOOK_AGAIN_MS = 5_000

/** Puts the batches of one sweep on the server and waits for their answers. */
export class Asker {
  readonly #events: QueueEvents
  readonly #waiting = new Map<string, () => void>()

  constructor(
    private readonly queue: Queue<LinesJob, LinesResult>,
    { connection, heard }: Connection,
    private readonly sweep: string,
    private readonly briefTexts: BriefTexts,
  ) {
    this.#events = new QueueEvents(QUEUE, { connection })
    this.#events.on('error', heard)
    const tell = ({ jobId }: { readonly jobId: string }) => this.#waiting.get(jobId)?.()
    this.#events.on('completed', tell)
    this.#events.on('failed', tell)
  }

  /** Listens to the server; to be awaited before anything is asked. */
  async ready(): Promise<void> {
    await this.#events.waitUntilReady()
  }

  /** The answers to a batch, whoever works them out, and however many die over it. */
  async ask(batch: Batch): Promise<Answered> {
    const options = jobOptions(this.sweep, batch)
    const id = options.jobId ?? ''
    const data = this.#jobOf(batch)
    const left = await this.queue.getJob(id)
    if (left?.finishedOn !== undefined && !isAnswered(left)) await left.remove()
    for (;;) {
      const word = this.#wordOf(id)
      const job = (await this.queue.getJob(id)) ?? (await this.queue.add('lines', data, options))
      if (isAnswered(job)) {
        word.leaveOff()
        const { text, ...rest } = job.returnvalue
        return { ...rest, bytes: new TextEncoder().encode(text) }
      }
      if (job.finishedOn !== undefined) {
        word.leaveOff()
        throw givenUp(batch, job.failedReason)
      }
      await word.comes
    }
  }

  /** Takes the job of a batch, whose answers are written, from the server. */
  async forget(batch: Batch): Promise<void> {
    await this.queue.remove(jobOptions(this.sweep, batch).jobId ?? '')
  }

  async close(): Promise<void> {
    await this.#events.close()
  }

  /** Settles at word of a job, or when it is time to look for oneself: word may be lost, answers are not. */
  #wordOf(id: string): { readonly comes: Promise<void>; leaveOff(): void } {
    let come: () => void = () => undefined
    const comes = new Promise<void>((resolve) => {
      come = resolve
    })
    const timer = setTimeout(come, LOOK_AGAIN_MS).unref()
    const leaveOff = () => {
      clearTimeout(timer)
      this.#waiting.delete(id)
      come()
    }
    this.#waiting.set(id, leaveOff)
    return { comes, leaveOff }
  }

  #jobOf({ firstLine, bytes }: Batch): LinesJob {
    const text = new TextDecoder().decode(bytes)
    const briefs: Record<string, BriefText> = {}
    for (const line of text.split('\n')) {
      const path = briefPathOf(line)
      if (path !== undefined) briefs[path] = this.briefTexts(path)
    }
    return { firstLine, text, briefs }
  }
}

function isAnswered(job: Job<LinesJob, LinesResult>): boolean {
  return job.finishedOn !== undefined && Boolean(job.returnvalue)
}

function givenUp({ firstLine, count }: Batch, reason: string): SweepStopped {
  return new SweepStopped(
    `Workers gave up lines ${firstLine} to ${firstLine + count - 1}: ${reason}.`,
  )
}
