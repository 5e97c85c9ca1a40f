import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { lastOf, resultOf } from '../../src/worker/piecemeal'

beforeEach(() => vi.useFakeTimers({ toFake: ['performance'] }))
afterEach(() => vi.useRealTimers())

/** Counts to five, a step every so many milliseconds of the clock. */
function* counting(stepMs: number): Generator<number, string, void> {
  for (let count = 1; count <= 5; count++) {
    vi.advanceTimersByTime(stepMs)
    yield count
  }
  return 'counted'
}

/** More than it takes until something is told again. */
const LONG_MS = 110

test('a search that takes long tells every step, in order, and ends with its last', async () => {
  const told: number[] = []
  const last = await lastOf(counting(LONG_MS), (count) => told.push(count) > 0)
  expect(told).toEqual([1, 2, 3, 4, 5])
  expect(last).toBe(5)
})

test('a search that is over at once tells its first step alone', async () => {
  const told: number[] = []
  expect(await resultOf(counting(0), (count) => told.push(count) > 0)).toBe('counted')
  expect(told).toEqual([1])
})

test('a search that is no longer wanted goes no further', async () => {
  const told: number[] = []
  const goesOn = (count: number) => Promise.resolve(told.push(count) < 2)
  expect(await lastOf(counting(LONG_MS), goesOn)).toBe(2)
  expect(await resultOf(counting(LONG_MS), () => false)).toBeUndefined()
  expect(told).toEqual([1, 2])
})

test('a search that nobody listens to runs to its end', async () => {
  expect(await lastOf(counting(0), undefined)).toBe(5)
  expect(await resultOf(counting(0), undefined)).toBe('counted')
})
