import { beforeAll, describe, expect, test } from 'vitest'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { generalProgram } from '../../../generator/general-programs'
import { blendInstance, KINDS } from '../../../generator/random-programs'
import { disagreements, type Tally } from './agreement'
import { loadHighs, type Reference } from './highs'

const PER_KIND = 500
const GENERAL = 2000
const MINUTE_MS = 60_000

let highs: (program: LinearProgram) => Reference
beforeAll(async () => {
  highs = await loadHighs()
})

describe('random programs agree with HiGHS in status and, to 1e-9, in optimum, with every proof', () => {
  test.each(KINDS.map((kind, k) => ({ kind, k })))(
    `${PER_KIND} blends of kind $kind`,
    ({ kind, k }) => {
      const instances = Array.from({ length: PER_KIND }, (_, s) =>
        blendInstance(s * KINDS.length + k, { kind }),
      )
      const tally: Tally = { optimal: 0, infeasible: 0, unbounded: 0 }
      for (const { name, program, expectation } of instances) {
        const { status, faults } = disagreements(program, highs)
        expect(faults, name).toEqual([])
        if (expectation === 'feasible') expect(status, name).toBe('optimal')
        if (expectation === 'infeasible') expect(status, name).toBe('infeasible')
        tally[status]++
      }
      expect(tally.optimal + tally.infeasible).toBe(PER_KIND)
    },
    MINUTE_MS,
  )

  test(
    `${GENERAL} general programs, with all three outcomes among them`,
    () => {
      const tally: Tally = { optimal: 0, infeasible: 0, unbounded: 0 }
      for (let seed = 0; seed < GENERAL; seed++) {
        const { status, faults } = disagreements(generalProgram(seed), highs)
        expect(faults, `seed ${seed}`).toEqual([])
        tally[status]++
      }
      expect(Math.min(tally.optimal, tally.infeasible, tally.unbounded)).toBeGreaterThan(
        GENERAL / 20,
      )
    },
    MINUTE_MS,
  )
})
