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
