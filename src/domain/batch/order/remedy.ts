import type { BatchOrder } from './order'

/**
 * What a remark is about, unique within a plan: buttons, warnings and lines find each other by it, never by
 * their wording.
 */
export type RemarkCode =
  | 'blocked.lean'
  | 'lean.worst'
  | 'lean.confirmed'
  | 'lean.cook'
  | 'lean.onPaper'
  | 'rich'
  | 'lye.strong'
  | 'lye.weak'
  | 'heat'
  | 'soft'
  | 'acid.unpaid'
  | 'acid.bicarbonate'
  | `acid.form.${number}`
  | `acid.dose.${number}`
  | `dose.${number}`
  | `scent.${string}`
  | `lot.${string}`
  | `wax.${string}`

/** A change of the order that answers a remark, or a problem at a path. */
export interface Remedy {
  /** The code of the remark, or the path of the problem, that it answers. */
  readonly answers: RemarkCode | (string & {})
  /** What a button for it says: "Ask for 5.6 %". */
  readonly says: string
  readonly change: Partial<BatchOrder>
}

/** A way out of a remark: one change of the order. */
export type WayOut = Omit<Remedy, 'answers'>

/** A remark on a batch that can be weighed out, and what would answer it. */
export interface Remark {
  readonly code: RemarkCode
  readonly message: string
  readonly ways?: readonly WayOut[] | undefined
}

/** The remedies of some remarks, each with the code of what it answers. */
export function remediesIn(remarks: readonly Remark[]): Remedy[] {
  return remarks.flatMap(({ code, ways = [] }) => ways.map((way) => ({ ...way, answers: code })))
}
