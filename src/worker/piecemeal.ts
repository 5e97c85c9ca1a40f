import type { GoesOn } from './protocol'

/** How often whoever asked is told how far an answer is, in milliseconds. */
const TELL_EVERY_MS = 100

/**
 * The last thing that a long search yields. It is told on the way and stopped where it is no longer
 * wanted, with what there was by then.
 */
export async function lastOf<T>(
  search: Generator<T, unknown, void>,
  goesOn: GoesOn<T> | undefined,
): Promise<T | undefined> {
  const telling = new Telling(goesOn)
  let last: T | undefined
  for (const one of search) {
    last = one
    if (!(await telling.isWanted(one))) break
  }
  return last
}

/** What a long search comes to; undefined where it was stopped before its end. */
export async function resultOf<T, R>(
  search: Generator<T, R, void>,
  goesOn: GoesOn<T> | undefined,
): Promise<R | undefined> {
  const telling = new Telling(goesOn)
  for (;;) {
    const step = search.next()
    if (step.done) return step.value
    if (!(await telling.isWanted(step.value))) return undefined
  }
}

/** Tells now and then, so that telling does not take longer than searching. */
class Telling<T> {
  #toldMs = -Infinity

  constructor(private readonly goesOn: GoesOn<T> | undefined) {}

  async isWanted(soFar: T): Promise<boolean> {
    if (!this.goesOn || performance.now() - this.#toldMs < TELL_EVERY_MS) return true
    const isWanted = await this.goesOn(soFar)
    this.#toldMs = performance.now()
    return isWanted
  }
}
