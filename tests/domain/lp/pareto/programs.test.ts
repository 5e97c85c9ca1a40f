import { describe, expect, test } from 'vitest'
import { KINDS } from '../../../generator/random-programs'
import { programFaults } from './program-surfaces'

/** Programs of each of the generator's kinds, the degenerate ones among them. */
const PROGRAMS_OF_EACH_KIND = 6

describe.each([2, 3, 4])('surfaces of random programs under %i objectives', (count) => {
  test.each([
    ['efficient sides', false],
    ['whole hulls', true],
  ])(
    '%s of every kind agree with HiGHS',
    (_, wholeHull) => {
      const seeds = Array.from({ length: PROGRAMS_OF_EACH_KIND * KINDS.length }, (_, seed) => seed)
      const all = seeds.map((seed) => programFaults(seed, count, wholeHull))
      const found = all.filter((faults) => faults !== 'infeasible')
      expect(found.flat()).toEqual([])
      expect(found.length).toBeGreaterThan(seeds.length / 2)
    },
    60_000,
  )
})
