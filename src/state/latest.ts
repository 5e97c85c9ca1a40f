/**
 * Asks only what is still wanted: while one question is under way, newer ones replace each other, and
 * the answers and errors of replaced or overtaken questions are dropped. A question is told by a signal
 * when it is overtaken or stopped, so that a long one can end at once.
 */
export class Latest<Q, A> {
  #running: AbortController | undefined
  #next: Q | undefined

  constructor(
    private readonly ask: (question: Q, signal: AbortSignal) => Promise<A>,
    private readonly onAnswer: (question: Q, answer: A) => void,
    private readonly onError: (question: Q, error: unknown) => void,
  ) {}

  /** Puts a question; it is asked at once, or after the one under way unless a newer one comes. */
  put(question: Q): void {
    this.#next = question
    if (this.#running) this.#running.abort()
    else void this.#run(question)
  }

  /** Calls off what is under way, and what waits behind it. */
  stop(): void {
    this.#next = undefined
    this.#running?.abort()
  }

  async #run(first: Q): Promise<void> {
    for (let question: Q | undefined = first; question !== undefined; question = this.#next) {
      this.#next = undefined
      const controller = new AbortController()
      this.#running = controller
      const { signal } = controller
      try {
        const answer = await this.ask(question, signal)
        if (!signal.aborted) this.onAnswer(question, answer)
      } catch (error) {
        if (!signal.aborted) this.onError(question, error)
      }
    }
    this.#running = undefined
  }
}
