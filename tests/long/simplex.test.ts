import highsLoader from 'highs'
import { beforeAll, describe, expect, test } from 'vitest'
import { Simplex } from '../../src/domain/lp/simplex/simplex'
import type { LinearProgram } from '../../src/domain/lp/program'
import { disagreements, faultsOf, type Tally } from '../domain/lp/simplex/agreement'
import { loadHighs, type Reference } from '../domain/lp/simplex/highs'
import { ruledDisagreements } from '../domain/lp/search/ruled-agreement'
import { generalProgram } from '../generator/general-programs'
import { blendInstance } from '../generator/random-programs'
import { ruledInstance } from '../generator/ruled-programs'

const BLENDS = 50_000
const GENERAL = 50_000
/** Seeds apart from those of the usual tests. */
const FIRST_SEED = 1_000_000
const HALF_HOUR_MS = 30 * 60_000
const MEGABYTE = 2 ** 20

let highs: (program: LinearProgram) => Reference
beforeAll(async () => {
  highs = await loadHighs()
})

function faultsOver(count: number, programOf: (seed: number) => LinearProgram) {
  const tally: Tally = { optimal: 0, infeasible: 0, unbounded: 0 }
  const faults: string[] = []
  for (let seed = FIRST_SEED; seed < FIRST_SEED + count; seed++) {
    const found = disagreements(programOf(seed), highs)
    tally[found.status]++
    faults.push(...found.faults.map((fault) => `seed ${seed}: ${fault}`))
  }
  return { tally, faults }
}

describe('the simplex solver against HiGHS', () => {
  test(
    `agrees on ${BLENDS} random blends, every answer proved`,
    () => {
      const { tally, faults } = faultsOver(BLENDS, (seed) => blendInstance(seed).program)
      expect(faults).toEqual([])
      expect(tally.unbounded).toBe(0)
      expect(tally.infeasible).toBeGreaterThan(BLENDS / 10)
    },
    HALF_HOUR_MS,
  )

  test(
    `agrees on ${GENERAL} random general programs, every answer proved`,
    () => {
      const { tally, faults } = faultsOver(GENERAL, generalProgram)
      expect(faults).toEqual([])
      expect(Math.min(tally.optimal, tally.infeasible, tally.unbounded)).toBeGreaterThan(
        GENERAL / 20,
      )
    },
    HALF_HOUR_MS,
  )
})

describe('the search under rules against HiGHS', () => {
  test.each([
    { oils: 20, step: 0, count: 1000 },
    { oils: 40, step: 0, count: 200 },
    { oils: 12, step: 5, count: 500 },
  ] as const)(
    'agrees on $count random programs of $oils oils, step $step',
    async ({ oils, step, count }) => {
      const solver = await highsLoader()
      const faults: string[] = []
      for (let seed = FIRST_SEED; seed < FIRST_SEED + count; seed++) {
        const found = ruledDisagreements(ruledInstance(seed, oils, step), solver)
        faults.push(...found.faults.map((fault) => `seed ${seed}: ${fault}`))
      }
      expect(faults).toEqual([])
    },
    HALF_HOUR_MS,
  )
})

describe('100,000 solves in a row', () => {
  test(
    'keep every proof, do not drift and need no more memory than the first thousand',
    () => {
      const { program } = blendInstance(8, { kind: 'plain', oils: 50, measures: 8, groups: 3 })
      const simplex = new Simplex(program)
      const rows = program.rows.map((row) => ({ ...row }))
      let bytesAfterWarmUp = 0
      for (let k = 0; k < 100_000; k++) {
        const i = 1 + (k % (rows.length - 1))
        const row = rows[i]
        const own = program.rows[i]
        if (!row || !own) throw new RangeError(`no row ${i}`)
        const shift = 2 * Math.sin(k)
        row.lower = own.lower + shift
        row.upper = own.upper + shift
        simplex.setRowBounds(i, row.lower, row.upper)
        const outcome = simplex.solve()
        const faults = k % 500 === 0 ? faultsOf({ ...program, rows }, outcome) : []
        expect(faults, `solve ${k}`).toEqual([])
        if (k === 1000) bytesAfterWarmUp = process.memoryUsage().arrayBuffers
      }
      expect(process.memoryUsage().arrayBuffers - bytesAfterWarmUp).toBeLessThan(MEGABYTE)
    },
    HALF_HOUR_MS,
  )
})
