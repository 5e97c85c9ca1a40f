import type { Work } from './work'

/** Changes of one thing that follow within this time are one step of undo: a drag, a word typed. */
const ONE_STEP_MS = 900

/** Steps kept; older ones are forgotten. */
const MOST_STEPS = 500

/** The work in hand with its past and its undone future. Every change replaces the work as a whole. */
export class WorkHistory {
  now: Work = $state.raw() as Work
  #past: readonly Work[] = $state.raw([])
  #future: readonly Work[] = $state.raw([])
  #lastThing: string | undefined
  #lastAt = -Infinity

  constructor(work: Work) {
    this.now = work
  }

  readonly canUndo = $derived(this.#past.length > 0)
  readonly canRedo = $derived(this.#future.length > 0)

  /**
   * Changes the work. Changes of the same `thing` that follow each other closely merge into one step;
   * a change without one is a step of its own.
   */
  change(change: (work: Work) => Work, thing?: string): void {
    const next = change(this.now)
    if (next === this.now) return
    const at = performance.now()
    const merges =
      thing !== undefined && thing === this.#lastThing && at - this.#lastAt < ONE_STEP_MS
    if (!merges) this.#past = [...this.#past, this.now].slice(-MOST_STEPS)
    this.#future = []
    this.now = next
    this.#lastThing = thing
    this.#lastAt = at
  }

  /** Goes one step back. */
  undo(): void {
    const before = this.#past.at(-1)
    if (!before) return
    this.#past = this.#past.slice(0, -1)
    this.#future = [this.now, ...this.#future]
    this.#settle(before)
  }

  /** Goes one undone step forward again. */
  redo(): void {
    const [after, ...rest] = this.#future
    if (!after) return
    this.#future = rest
    this.#past = [...this.#past, this.now]
    this.#settle(after)
  }

  #settle(work: Work): void {
    this.now = work
    this.#lastThing = undefined
  }
}
