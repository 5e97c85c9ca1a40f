import type { SearchProgress } from '../../lp/search/branch'

/** How long a search under rules may take; what is left out has its default. */
export interface SearchBudget {
  /** Milliseconds for the whole of what is asked; DEFAULT_TIME_MS if left out. */
  readonly timeMs?: number | undefined
  /** Linear programs for the whole of what is asked; no limit if left out. The same on every machine. */
  readonly nodes?: number | undefined
  /** The time in milliseconds; `performance.now` if left out. */
  readonly now?: (() => number) | undefined
  /** Asked at every node; true calls all searches off. */
  readonly shouldStop?: (() => boolean) | undefined
}

/**
 * Five seconds. Of 40 oils the searches take a few milliseconds (see `searchFor`), so this is met only
 * where limits are so tight that hardly a blend keeps the rules.
 */
export const DEFAULT_TIME_MS = 5000

/** Asked at every node whether to search on. */
export type GoOn = (progress: SearchProgress) => boolean

/** A budget being spent by one search after another. */
export class Allowance {
  readonly #now: () => number
  readonly #shouldStop: () => boolean
  readonly #endMs: number
  #nodesLeft: number

  constructor({ timeMs = DEFAULT_TIME_MS, nodes = Infinity, now, shouldStop }: SearchBudget = {}) {
    this.#now = now ?? (() => performance.now())
    this.#shouldStop = shouldStop ?? (() => false)
    this.#endMs = this.#now() + timeMs
    this.#nodesLeft = nodes
  }

  /** Whether nothing is left: searches then solve one program each, for a bound. */
  get isSpent(): boolean {
    return this.#nodesLeft <= 0 || this.#now() >= this.#endMs || this.#shouldStop()
  }

  /**
   * Leave for one of so many searches still to come: an equal part of what is left, so that a hard one
   * does not starve the rest; what it leaves over goes to them. Each may solve its first program, so
   * that it ends with a bound.
   */
  share(searches = 1): GoOn {
    const start = this.#now()
    const endMs = start + (this.#endMs - start) / searches
    const mostNodes = this.#nodesLeft / searches
    return ({ nodes }) => {
      const goesOn =
        nodes === 0 || (nodes < mostNodes && this.#now() < endMs && !this.#shouldStop())
      if (goesOn) this.#nodesLeft--
      return goesOn
    }
  }
}
