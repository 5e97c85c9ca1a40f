/** Thrown where a sweep can't begin as asked; the message says what to do. */
export class SweepRefused extends Error {
  override readonly name = 'SweepRefused'
}

/** What stays of a sweep that stopped. */
const WHAT_STAYS = 'What is written stays; the same command goes on from there.'

/** Thrown where a sweep could not go on; the message says why, what stays and how to go on. */
export class SweepStopped extends Error {
  override readonly name = 'SweepStopped'

  constructor(
    readonly reason: string,
    options?: ErrorOptions,
    stays = WHAT_STAYS,
  ) {
    super(`${reason} ${stays}`, options)
  }
}
