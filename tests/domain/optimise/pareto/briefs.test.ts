import { describe, expect, test } from 'vitest'
import { sampleBriefs } from '../../../property/briefs'
import { briefFaults } from './brief-surfaces'

const BRIEFS = 60
const HULLS = 45
const DIRECTIONS = 1_000
const SEED = 20_261
/** Briefs drawn to find so many that some blend keeps. */
const DRAWN = 140

/** The surfaces of the first feasible briefs of the generator, with 2, 3 and 4 axes in turn. */
function checked(count: number, whole: boolean, directions: number) {
  const found: NonNullable<ReturnType<typeof briefFaults>>[] = []
  for (const [k, brief] of sampleBriefs(DRAWN, SEED).entries()) {
    if (found.length === count) break
    const options = { wholeHull: whole }
    const one = briefFaults(brief, 2 + (k % 3), options, { directions, seed: SEED + k })
    if (one) found.push(one)
  }
  return found
}

describe('surfaces of random briefs against HiGHS', () => {
  test(`no vertex is missing or wrong in ${DIRECTIONS} random directions, each vertex's and each facet's`, () => {
    const found = checked(BRIEFS, false, DIRECTIONS)
    expect(found.length).toBe(BRIEFS)
    expect(found.flatMap(({ faults }) => faults)).toEqual([])
    const sizes = found.map(({ surface }) => surface.vertices.length)
    expect(Math.max(...sizes)).toBeGreaterThan(10)
  }, 60_000)

  test('whole hulls are tight in all directions and hold random blends', () => {
    const found = checked(HULLS, true, 100)
    expect(found.length).toBe(HULLS)
    expect(found.flatMap(({ faults }) => faults)).toEqual([])
    const dimensions = new Set(found.map(({ surface }) => surface.dimension))
    expect([...dimensions].sort()).toEqual([0, 1, 2, 3, 4])
  }, 60_000)
})
