import { describe, expect, test } from 'vitest'
import { changeBetween, mostDistinct } from '../../../../src/domain/optimise/alternatives/distinct'
import { seededRandom } from '../../../../src/domain/chance/random'

describe('choosing the most distinct', () => {
  test('changes at least half as much as the best of all choices, over 300 small pools', () => {
    let short = 0
    for (let seed = 0; seed < 300; seed++) {
      const random = seededRandom(seed)
      const oils = 2 + Math.floor(4 * random())
      const blends = Array.from({ length: 10 }, () => randomBlend(oils, random))
      const [first = new Float64Array(), ...pool] = blends
      const count = 2 + Math.floor(4 * random())
      const chosen = mostDistinct([first], pool, count, 0)
      const best = Math.max(...choices(blends, count).map(leastChange))
      expect(chosen).toHaveLength(count)
      expect(leastChange(chosen), `seed ${seed}`).toBeGreaterThanOrEqual(best / 2 - 1e-9)
      if (leastChange(chosen) < best - 1e-9) short++
    }
    // The bound is not idle: greedy misses the best choice in many of these pools.
    expect(short).toBeGreaterThan(30)
  })

  test('takes the farthest from the first, then the farthest from both: by hand', () => {
    // Of two oils, by the share of one: 0, then 100, then 45 (55 from the nearer end, times two).
    const pool = [10, 45, 100, 90].map(ofTwo)
    const chosen = mostDistinct([ofTwo(0)], pool, 3, 1)
    expect(chosen.map(([share]) => share)).toEqual([0, 100, 45])
  })

  test('stops where what is left changes less than was asked', () => {
    // 0.4 of one oil for the other is a change of 0.8, 0.6 one of 1.2.
    expect(mostDistinct([ofTwo(0)], [0, 0.4].map(ofTwo), 3, 1)).toEqual([ofTwo(0)])
    expect(mostDistinct([ofTwo(0)], [0, 0.6].map(ofTwo), 3, 1)).toEqual([ofTwo(0), ofTwo(0.6)])
    expect(mostDistinct([ofTwo(0)], [], 3, 1)).toEqual([ofTwo(0)])
  })

  test('never takes a blend twice, even if anything would do', () => {
    const pool = [20, 20, 0].map(ofTwo)
    expect(mostDistinct([ofTwo(0)], pool, 3, Number.MIN_VALUE)).toEqual([ofTwo(0), ofTwo(20)])
  })
})

function ofTwo(share: number): Float64Array {
  return Float64Array.of(share, 100 - share)
}

function randomBlend(oils: number, random: () => number): Float64Array {
  const parts = Array.from({ length: oils }, () => (random() < 0.4 ? 0 : random()))
  parts[0] = (parts[0] ?? 0) + 0.01
  const total = parts.reduce((sum, part) => sum + part, 0)
  return Float64Array.from(parts, (part) => (100 * part) / total)
}

function leastChange(blends: readonly Float64Array[]): number {
  return Math.min(
    ...blends.flatMap((one, k) => blends.slice(0, k).map((other) => changeBetween(one, other))),
  )
}

/** All ways to choose so many. */
function choices<T>(items: readonly T[], count: number): T[][] {
  if (count === 0) return [[]]
  return items.flatMap((item, k) =>
    choices(items.slice(k + 1), count - 1).map((rest) => [item, ...rest]),
  )
}
