import type { Standing } from './contest'

/** How much to measure. */
export interface Effort {
  readonly quick: boolean
  /** One figure for a full run, another for a quick one. */
  readonly pick: <T>(full: T, quick: T) => T
}

export function effort(quick: boolean): Effort {
  return { quick, pick: (full, little) => (quick ? little : full) }
}

/** What a task came to, as it is handed to the report. */
export interface TaskResult {
  readonly id: string
  readonly standings: readonly Standing[]
  /** What was measured in this run, such as how many corners there were. */
  readonly facts: string
}
