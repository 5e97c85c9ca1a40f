import { describe, expect, test } from 'vitest'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import type { Outcome } from '../../../../src/domain/lp/simplex/answer'
import { Random } from '../../../generator/random'
import { generalProgram } from '../../../generator/general-programs'
import { blendInstance } from '../../../generator/random-programs'
import { faultsOf } from './agreement'

/** Largest relative difference of two optima that is put down to rounding. */
const RELATIVE = 1e-9

/** A program whose parts can be changed in step with a solver's. */
interface Draft {
  cost: number[]
  readonly lower: number[]
  readonly upper: number[]
  readonly rows: { coefficients: number[]; lower: number; upper: number }[]
}

function draftOf({ cost, lower, upper, rows }: LinearProgram): Draft {
  return {
    cost: Array.from(cost),
    lower: Array.from(lower),
    upper: Array.from(upper),
    rows: rows.map((row) => ({ ...row, coefficients: Array.from(row.coefficients) })),
  }
}

function get(values: readonly number[], index: number): number {
  const value = values[index]
  if (value === undefined) throw new RangeError(`no entry ${index}`)
  return value
}

function rowOf(draft: Draft, index: number): Draft['rows'][number] {
  const row = draft.rows[index]
  if (!row) throw new RangeError(`no row ${index}`)
  return row
}

type Change = (draft: Draft, simplex: Simplex, random: Random) => void

/** Everything a caller can change between two solves. */
const CHANGES: readonly [Change, ...Change[]] = [
  function cost(draft, simplex, random) {
    draft.cost = draft.cost.map((value) => value + random.int(-3, 3) * random.next())
    simplex.setCost(draft.cost)
  },
  function costAlongRow(draft, simplex, random) {
    const sign = random.pick([1, -1])
    const row = rowOf(draft, random.int(0, draft.rows.length - 1))
    draft.cost = row.coefficients.map((value) => sign * value)
    simplex.setCost(draft.cost)
  },
  function rowRange(draft, simplex, random) {
    const index = random.int(0, draft.rows.length - 1)
    const row = rowOf(draft, index)
    if (row.lower > -Infinity) row.lower += random.int(-4, 2)
    if (row.upper < Infinity) row.upper += random.int(-2, 4)
    simplex.setRowBounds(index, row.lower, row.upper)
  },
  function oilOutAndIn(draft, simplex, random) {
    const index = random.int(0, draft.cost.length - 1)
    draft.upper[index] = get(draft.upper, index) === 0 ? 100 : 0
    draft.lower[index] = Math.min(0, get(draft.lower, index))
    simplex.setVariableBounds(index, get(draft.lower, index), get(draft.upper, index))
  },
  function freedVariable(draft, simplex, random) {
    const index = random.int(0, draft.cost.length - 1)
    if (random.chance(0.5)) draft.lower[index] = -Infinity
    else draft.upper[index] = Infinity
    simplex.setVariableBounds(index, get(draft.lower, index), get(draft.upper, index))
  },
  function newRow(draft, simplex, random) {
    const coefficients = draft.cost.map(() => (random.chance(0.4) ? random.int(0, 3) : 0))
    const row = { coefficients, lower: -Infinity, upper: random.int(20, 200) }
    draft.rows.push(row)
    expect(simplex.addRow(row)).toBe(draft.rows.length - 1)
  },
]

function expectSame(warm: Outcome, cold: Outcome, label: string): void {
  expect(warm.status, label).toBe(cold.status)
  if (warm.status !== 'optimal' || cold.status !== 'optimal') return
  const gap = Math.abs(warm.objective - cold.objective)
  expect(gap / Math.max(1, Math.abs(cold.objective)), label).toBeLessThan(RELATIVE)
}

describe('a warm start answers as a cold one does', () => {
  test.each([
    { name: 'blends', programOf: (seed: number) => blendInstance(seed, { oils: 20 }).program },
    { name: 'general programs', programOf: generalProgram },
  ])('over 150 random walks of 25 changes on $name', ({ programOf }) => {
    const seen = new Set<string>()
    for (let seed = 0; seed < 150; seed++) {
      const random = new Random(seed)
      const draft = draftOf(programOf(seed))
      const simplex = new Simplex(draft)
      for (let step = 0; step < 25; step++) {
        const change = random.pick(CHANGES)
        change(draft, simplex, random)
        const label = `seed ${seed}, step ${step}, ${change.name}`
        const outcome = simplex.solve()
        expect(faultsOf(draft, outcome), label).toEqual([])
        expectSame(outcome, new Simplex(draft).solve(), label)
        seen.add(`${change.name} ${outcome.status}`)
      }
    }
    expect(seen.size).toBeGreaterThanOrEqual(2 * CHANGES.length)
  })

  test('with the optimum of one cost found again from a stored basis without a pivot', () => {
    for (let seed = 0; seed < 100; seed++) {
      const { program } = blendInstance(seed, { kind: 'plain' })
      const simplex = new Simplex(program)
      const before = simplex.solve()
      if (before.status !== 'optimal') throw new Error(`seed ${seed} is feasible by construction`)
      const { objective } = before
      const basis = simplex.saveBasis()
      simplex.setCost(Array.from(program.cost, (value) => -value))
      simplex.solve()
      simplex.setCost(program.cost)
      simplex.restoreBasis(basis)
      const pivots = simplex.pivots
      const after = simplex.solve()
      expect(simplex.pivots).toBe(pivots)
      expect(after.status === 'optimal' && Math.abs(after.objective - objective)).toBeLessThan(
        RELATIVE * Math.max(1, Math.abs(objective)),
      )
    }
  })

  test('after another program of the same shape was loaded', () => {
    const shape = { oils: 30, measures: 5, groups: 2, kind: 'plain' } as const
    const simplex = new Simplex(blendInstance(0, shape).program)
    for (let seed = 1; seed < 60; seed++) {
      const { program } = blendInstance(seed, shape)
      simplex.load(program)
      const outcome = simplex.solve()
      expect(faultsOf(program, outcome)).toEqual([])
      expectSame(outcome, new Simplex(program).solve(), `seed ${seed}`)
    }
  })
})
