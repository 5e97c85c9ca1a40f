import { describe, expect, test } from 'vitest'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import type { Outcome } from '../../../../src/domain/lp/simplex/answer'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { Random } from '../../../generator/random'
import { faultsOfOptimum, faultsOfInfeasibility } from './proofs'

const COUNT = 150

/** A blend of random parts, its other rows within 5 of a point that there is. */
function blend(random: Random): LinearProgram {
  const count = random.int(5, 35)
  const numbers = () => Array.from({ length: count }, () => Number(random.next().toFixed(3)))
  const whole = { coefficients: numbers().fill(1), lower: 100, upper: 100 }
  const free = Array.from({ length: random.int(2, 8) }, () => ({
    coefficients: numbers(),
    lower: -Infinity,
    upper: Infinity,
  }))
  const cost = numbers().map((one) => (2 + 8 * one) / 100)
  const upper = numbers().map((one) => (one < 0.5 ? 100 : 40 + 40 * one))
  const program = { cost, lower: numbers().fill(0), upper, rows: [whole, ...free] }
  const point = new Simplex(program).solve()
  if (point.status !== 'optimal') throw new Error('Parts of up to 40 and more make 100')
  const { rowValues } = point
  const rows = free.map((row, k) => {
    const value = rowValues[k + 1] ?? NaN
    return { ...row, lower: value - 5 * random.next(), upper: value + 5 * random.next() }
  })
  return { ...program, rows: [whole, ...rows] }
}

/** The blend with its last row asked to be more than it can be, by a part of the most. */
function beyond(program: LinearProgram, part: number): LinearProgram {
  const last = program.rows.length - 1
  const { coefficients } = program.rows[last] ?? { coefficients: [] }
  const rows = program.rows.map((row, k) => (k === last ? { ...row, upper: Infinity } : row))
  const most = new Simplex({
    ...program,
    rows,
    cost: Array.from(coefficients, (one) => -one),
  }).solve()
  if (most.status !== 'optimal') throw new Error('A row of a blend has a most')
  const lower = -most.objective * (1 + part)
  return { ...program, rows: rows.map((row, k) => (k === last ? { ...row, lower } : row)) }
}

/** What is wrong with an outcome, whichever it is. */
function faultsOf(program: LinearProgram, outcome: Outcome): string[] {
  if (outcome.status === 'optimal') return faultsOfOptimum(program, outcome)
  if (outcome.status === 'infeasible') return faultsOfInfeasibility(program, outcome)
  return ['unbounded']
}

describe('a limit out of reach by less than can be proved', () => {
  test.each([3e-10, 1e-10, 3e-11, 1e-11, 1e-12])(
    'by a part of %s, is kept to 1e-9 or refused with a proof, never given up',
    (part) => {
      const seen = { optimal: 0, infeasible: 0, unbounded: 0 }
      for (let seed = 0; seed < COUNT; seed++) {
        const program = beyond(blend(new Random(seed)), part)
        const outcome = new Simplex(program).solve()
        expect(faultsOf(program, outcome), `program ${seed}`).toEqual([])
        seen[outcome.status]++
      }
      expect(seen.optimal).toBeGreaterThan(0)
    },
  )

  test('by a part of 1e-7, is refused but for what rounding of the most itself explains', () => {
    let kept = 0
    for (let seed = 0; seed < COUNT; seed++) {
      const program = beyond(blend(new Random(seed)), 1e-7)
      if (new Simplex(program).solve().status === 'optimal') kept++
    }
    expect(kept).toBeLessThanOrEqual(COUNT / 50)
  })

  test('leaves the solver as it was: moved back within reach, it is solved as from new', () => {
    for (let seed = 0; seed < COUNT; seed++) {
      const program = beyond(blend(new Random(seed)), 1e-11)
      const last = program.rows.length - 1
      const solver = new Simplex(program)
      solver.solve()
      const lower = (program.rows[last]?.lower ?? NaN) - 1
      solver.setRowBounds(last, lower, Infinity)
      const rows = program.rows.map((row, k) => (k === last ? { ...row, lower } : row))
      const [warm, cold] = [solver.solve(), new Simplex({ ...program, rows }).solve()]
      if (warm.status !== 'optimal' || cold.status !== 'optimal') throw new Error(`program ${seed}`)
      expect(Math.abs(warm.objective - cold.objective)).toBeLessThan(1e-9 * cold.objective)
    }
  })
})

describe('costs that are rounding beside the largest', () => {
  test.each([1e-12, 1e-14, 1e-16, 1e-18])('of size %s beside 1e-2 decide nothing', (tiny) => {
    for (let seed = 0; seed < COUNT; seed++) {
      const random = new Random(seed)
      const program = blend(random)
      const isTiny = Array.from(program.cost, () => random.chance(0.5))
      const noise = Array.from(program.cost, () => tiny * (2 * random.next() - 1))
      const cost = Array.from(program.cost, (one, j) => (isTiny[j] ? (noise[j] ?? 0) : one))
      const clean = Array.from(program.cost, (one, j) => (isTiny[j] ? 0 : one))
      const [noisy, plain] = [cost, clean].map((one) =>
        new Simplex({ ...program, cost: one }).solve(),
      )
      if (noisy?.status !== 'optimal' || plain?.status !== 'optimal') throw new Error(`${seed}`)
      // A hundred parts at such a cost, twice over.
      expect(Math.abs(noisy.objective - plain.objective)).toBeLessThan(200 * tiny + 1e-9)
    }
  })

  test('but not those a little larger: a cost of 1e-9 beside 1 is minded where nothing else differs', () => {
    const solver = new Simplex({
      cost: [1e-9, 0, 1],
      lower: [0, 0, 10],
      upper: [100, 100, 10],
      rows: [{ coefficients: [1, 1, 1], lower: 100, upper: 100 }],
    })
    const outcome = solver.solve()
    expect(outcome.status === 'optimal' && [...outcome.x]).toEqual([0, 90, 10])
  })
})
