/** How long a thread should have with a batch, ms: handing one over takes a small part of it. */
const FITTING_MS = 20

const FIRST_LINES = 16
const MOST_LINES = 512

/** A batch grows at most so many times over the one before: one quick one says little. */
const MOST_GROWTH = 2

/**
 * Fits batches to how long their lines take: hard ones travel few at a time, so that all threads have work
 * and progress is seen; easy ones many, so that handing over costs little. Answers are the same anyhow.
 */
export class FittingBatch {
  #lines = FIRST_LINES

  get perBatch(): number {
    return this.#lines
  }

  /** Takes in how long a batch took. */
  took(count: number, ms: number): void {
    const fitting = (count * FITTING_MS) / Math.max(ms, 1)
    const most = Math.min(MOST_LINES, MOST_GROWTH * this.#lines)
    this.#lines = Math.max(1, Math.min(most, Math.round(fitting)))
  }
}
