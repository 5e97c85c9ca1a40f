/**
 * Asks only what is still wanted: while one question is under way, newer ones replace each other, and
 * the answers and errors of replaced or overtaken questions are dropped.
 */
export class Latest<Q, A> {
  #running = false
  #next: Q | undefined

  constructor(
    private readonly ask: (question: Q) => Promise<A>,
    private readonly onAnswer: (question: Q, answer: A) => void,
    private readonly onError: (question: Q, error: unknown) => void,
  ) {}

  /** Puts a question; it is asked at once, or after the one under way unless a newer one comes. */
  put(question: Q): void {
    this.#next = question
    if (!this.#running) void this.#run()
  }

  async #run(): Promise<void> {
    this.#running = true
    while (this.#next !== undefined) {
      const question = this.#next
      this.#next = undefined
      try {
        const answer = await this.ask(question)
        if (this.#next === undefined) this.onAnswer(question, answer)
      } catch (error) {
        if (this.#next === undefined) this.onError(question, error)
      }
    }
    this.#running = false
  }
}
