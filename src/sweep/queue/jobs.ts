import type { JobsOptions } from 'bullmq'
import type { Batch, BriefText, Counts } from '../batch'

/** Name of the queue on the server; the number is that of what its jobs are like. */
export const QUEUE = 'barwright-sweep-1'

/** What a worker is asked: everything it needs, as it may run on another machine. */
export interface LinesJob {
  readonly firstLine: number
  readonly text: string
  readonly briefs: Readonly<Record<string, BriefText>>
}

/** What a worker answers. */
export interface LinesResult {
  readonly text: string
  readonly counts: Counts
  readonly tookMs: number
}

/** Lines of one job: some milliseconds of work, or a second where rules make it hard. */
const LINES_PER_JOB = 128

/**
 * How many lines the job has that begins with a line. Jobs end at the same lines in every run, so that one
 * that goes on finds what workers have answered meanwhile.
 */
export function linesOfJob(firstLine: number): number {
  return LINES_PER_JOB - ((firstLine - 1) % LINES_PER_JOB)
}

/** Batches that are on the server at once, asked or answered: some MB. */
export const BATCHES_ON_SERVER = 64

const SECOND_MS = 1_000
const DAY_S = 24 * 60 * 60

/** A worker that has not been heard of for so long is taken for dead, and its lines go to others. */
export const SILENCE_MS = 5 * SECOND_MS

/** How often each worker looks for lines of dead ones. */
export const LOOK_MS = 2.5 * SECOND_MS

/** How many workers may die over the same lines before they are given up. */
export const MOST_DEATHS = 10

/**
 * Events that the server remembers for those who listen. A batch comes to some five, of which one has its
 * answers in it: some tens of kB.
 */
export const EVENTS_KEPT = 8 * BATCHES_ON_SERVER

/** Answers that nobody fetches go after so long, in seconds. */
const KEPT_S = 7 * DAY_S

/**
 * A batch's job is known by its sweep and its lines: asked for twice it is still one job, and answers
 * that are there already are not worked out again.
 */
export function jobOptions(sweep: string, { firstLine, count }: Batch): JobsOptions {
  return {
    jobId: `${sweep}-${firstLine}-${count}`,
    attempts: 3,
    removeOnComplete: { age: KEPT_S },
    removeOnFail: { age: KEPT_S },
  }
}
