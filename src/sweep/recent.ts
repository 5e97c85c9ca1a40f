/** Things by name, of which only those last asked for are kept. */
export class Recent<T> {
  readonly #kept = new Map<string, T>()

  constructor(private readonly most: number) {}

  /** The thing of that name, made where it is not kept. */
  get(name: string, make: () => T): T {
    const found = this.#kept.get(name) ?? make()
    this.#kept.delete(name)
    this.#kept.set(name, found)
    if (this.#kept.size > this.most) this.#dropOldest()
    return found
  }

  #dropOldest(): void {
    const { value: oldest } = this.#kept.keys().next()
    if (oldest !== undefined) this.#kept.delete(oldest)
  }
}
