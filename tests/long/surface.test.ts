import { describe, expect, test } from 'vitest'
import { briefFaults } from '../domain/optimise/pareto/brief-surfaces'
import { programFaults } from '../domain/lp/pareto/program-surfaces'
import { sampleBriefs } from '../property/briefs'

const PROGRAMS = 1_600
const BRIEFS = 600
const DIRECTIONS = 1_000
/** Seeds apart from those of the usual tests. */
const FIRST_SEED = 500_000

describe.each([2, 3, 4])('surfaces under %i objectives against HiGHS', (count) => {
  test.each([
    ['efficient sides', false],
    ['whole hulls', true],
  ])(`%s of ${PROGRAMS} random programs of all kinds`, (_, wholeHull) => {
    let found = 0
    const faults: string[] = []
    for (let seed = FIRST_SEED; seed < FIRST_SEED + PROGRAMS; seed++) {
      const one = programFaults(seed, count, wholeHull)
      if (one === 'infeasible') continue
      found++
      faults.push(...one)
    }
    expect(faults).toEqual([])
    expect(found).toBeGreaterThan(PROGRAMS / 2)
  })
})

describe.each([2, 3, 4])('surfaces of random briefs with %i axes against HiGHS', (count) => {
  test.each([
    ['wanted sides', false],
    ['whole hulls', true],
  ])(`%s of ${BRIEFS} briefs in ${DIRECTIONS} directions`, (_, wholeHull) => {
    const found = sampleBriefs(BRIEFS, FIRST_SEED + count).flatMap((brief, k) => {
      const one = briefFaults(
        brief,
        count,
        { wholeHull },
        { directions: DIRECTIONS, seed: FIRST_SEED + k },
      )
      return one ? [one] : []
    })
    expect(found.flatMap(({ faults }) => faults)).toEqual([])
    expect(found.length).toBeGreaterThan(BRIEFS / 4)
  })
})
