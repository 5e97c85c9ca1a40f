/**
 * A seeded source of numbers, even over 0 (in) to 1 (out) and the same on every machine: Mulberry32
 * (T. Ettinger, 2017, public domain; from memory), 32 bits of state. Any whole number is a seed;
 * another counts as its whole part, modulo 2^32. Good enough to sample with, never for secrets.
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}
