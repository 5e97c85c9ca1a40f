import type { BatchOrder } from './order'

/** A change of the order that answers a warning or a problem. */
export interface Remedy {
  /** What it answers, word for word. */
  readonly answers: string
  /** What a button for it says: "Ask for 5.6 %". */
  readonly says: string
  readonly change: Partial<BatchOrder>
}

/** A remark on a batch, and what would answer it, where one change does. */
export interface Remark {
  readonly message: string
  readonly remedy?: Omit<Remedy, 'answers'> | undefined
}

/** The remedies of some remarks, each with the words it answers. */
export function remediesIn(remarks: readonly Remark[]): Remedy[] {
  return remarks.flatMap(({ message, remedy }) => (remedy ? [{ ...remedy, answers: message }] : []))
}
