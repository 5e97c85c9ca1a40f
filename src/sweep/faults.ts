/** Thrown where a sweep can't begin as asked; the message says what to do. */
export class SweepRefused extends Error {
  override readonly name = 'SweepRefused'
}

/** Thrown where a sweep could not go on; what it wrote stays, and the message says so. */
export class SweepStopped extends Error {
  override readonly name = 'SweepStopped'

  constructor(reason: string, options?: ErrorOptions) {
    super(`${reason} What is written stays; the same command goes on from there.`, options)
  }
}
