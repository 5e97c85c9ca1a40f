/** A seeded source of numbers in [0, 1): Mulberry32, 32 bits of state, the same on every machine. */
export class Random {
  private state: number

  constructor(seed: number) {
    this.state = (seed * 2654435761 + 12345) >>> 0
  }

  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0
    let t = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }

  /** A whole number from low to high, both included. */
  int(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1))
  }

  pick<T>(items: readonly [T, ...T[]]): T {
    return items[Math.floor(this.next() * items.length)] ?? items[0]
  }

  chance(probability: number): boolean {
    return this.next() < probability
  }
}

/** The numbers from 0 to count - 1 in random order. */
export function shuffled(random: Random, count: number): number[] {
  const order = Array.from({ length: count }, (_, k) => k)
  for (let k = count - 1; k > 0; k--) {
    const other = random.int(0, k)
    ;[order[k], order[other]] = [at(order, other), at(order, k)]
  }
  return order
}

/** Σ a · b. */
export function product(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, k) => sum + value * at(b, k), 0)
}

/** The item there is, or an error. */
export function at<T>(items: readonly T[], index: number): T {
  const item = items[index]
  if (item === undefined) throw new RangeError(`Index ${index} of ${items.length}`)
  return item
}
