/** Lines that travel together. */
export interface Batch {
  /** Number of the first line, from 1. */
  readonly firstLine: number
  readonly count: number
  /** The lines as they stand in the file, each with its end; the last may lack it. */
  readonly bytes: Uint8Array<ArrayBuffer>
  /** Where in the file the batch ends. */
  readonly endOffset: number
}

/** The statuses that the answer to a line may have. */
export const STATUSES = [
  'solved',
  'feasible',
  'undecided',
  'infeasible',
  'invalid',
  'failed',
] as const

export type Status = (typeof STATUSES)[number]

/** How many lines had each status. */
export type Counts = Readonly<Record<Status, number>>

export const NO_COUNTS: Counts = {
  solved: 0,
  feasible: 0,
  undecided: 0,
  infeasible: 0,
  invalid: 0,
  failed: 0,
}

/** The answers to a batch: one line of JSON each, in its order. */
export interface Answered {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly counts: Counts
  /** How long the thread worked on them, ms. */
  readonly tookMs: number
}

/** The text of a brief that lines name by its path, or why it can't be read. */
export type BriefText = { readonly text: string } | { readonly code: string }

/** What a solving thread is asked. */
export interface Task {
  readonly firstLine: number
  readonly bytes: Uint8Array<ArrayBuffer>
  /** Where paths of briefs start, or the briefs themselves by path where the thread has no such folder. */
  readonly briefs: string | Readonly<Record<string, BriefText>>
}

export function addCounts(a: Counts, b: Counts): Counts {
  const sum = { ...a }
  for (const status of STATUSES) sum[status] += b[status]
  return sum
}

/** Longest line that is read, in bytes; a brief of a thousand oils stays far below. */
export const LONGEST_LINE = 256 * 1024
