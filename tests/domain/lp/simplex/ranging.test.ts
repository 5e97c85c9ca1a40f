import { describe, expect, test } from 'vitest'
import { boundRange } from '../../../../src/domain/lp/simplex/ranging'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import type { Bounds, LinearProgram } from '../../../../src/domain/lp/program'
import type { Optimal } from '../../../../src/domain/lp/simplex/answer'
import { blendInstance } from '../../../generator/random-programs'
import { programOf, readCases, type Problem } from './case-files'

const RELATIVE = 1e-9
/** How far past an interval's end a change is looked for, as part of the range's size or 1. */
const BEYOND = 1e-3

function optimum(program: LinearProgram): { simplex: Simplex; answer: Optimal } {
  const simplex = new Simplex(program)
  const answer = simplex.solve()
  if (answer.status !== 'optimal') throw new Error(answer.status)
  return { simplex, answer: { ...answer, x: answer.x.slice() } }
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= RELATIVE * Math.max(1, Math.abs(a), Math.abs(b))
}

/** Points of an interval to test: its finite ends and one in the middle or far out. */
function probes({ lower: least, upper: most }: Bounds): number[] {
  const ends = [least, most].filter(Number.isFinite)
  if (ends.length === 2) return [...ends, (least + most) / 2]
  const [end = 0] = ends
  return [...ends, least === -Infinity ? end - 50 : end + 50]
}

function withRow(program: LinearProgram, i: number, lower: number, upper: number): LinearProgram {
  const rows = program.rows.map((row, k) => (k === i ? { ...row, lower, upper } : row))
  return { ...program, rows }
}

const BLENDS = Array.from({ length: 60 }, (_, seed) =>
  blendInstance(seed, { kind: seed % 2 ? 'plain' : 'duplicate', oils: 20 }),
)

describe('ranging of Wyndor (Hillier & Lieberman, chapter 3 and sensitivity chapter)', () => {
  const wyndor = readCases<Problem>('problems').find(({ name }) => name === 'wyndor')
  if (!wyndor) throw new Error('wyndor is not on file')
  const { simplex } = optimum(programOf(wyndor))

  test('plant 1 needs at least 2 hours; plant 2 may have 6 to 18, plant 3 12 to 24', () => {
    const range = (index: number): Bounds => boundRange(simplex, { kind: 'row', index }, 'upper')
    expect(range(0).lower).toBeCloseTo(2, 12)
    expect(range(0).upper).toBe(Infinity)
    expect(range(1).lower).toBeCloseTo(6, 12)
    expect(range(1).upper).toBeCloseTo(18, 12)
    expect(range(2).lower).toBeCloseTo(12, 12)
    expect(range(2).upper).toBeCloseTo(24, 12)
  })
})

describe('bound ranges, by moving the bound and solving again', () => {
  test('hold the price throughout and not beyond, for every row of 60 blends', () => {
    let ends = 0
    let tried = 0
    for (const { program, name } of BLENDS) {
      const { simplex, answer } = optimum(program)
      program.rows.forEach((row, i) => {
        const equality = row.lower === row.upper
        for (const side of ['lower', 'upper'] as const) {
          const bound = row[side]
          if (!Number.isFinite(bound)) continue
          const range = boundRange(simplex, { kind: 'row', index: i }, side)
          const rests = Math.abs((answer.rowValues[i] ?? NaN) - bound) < 1e-7
          const price = equality || rests ? (answer.duals[i] ?? NaN) : 0
          const label = `${name}, row ${i} ${side} ${bound}, [${range.lower}, ${range.upper}]`
          const solveAt = (value: number) =>
            new Simplex(
              equality
                ? withRow(program, i, value, value)
                : withRow(
                    program,
                    i,
                    side === 'lower' ? value : row.lower,
                    side === 'upper' ? value : row.upper,
                  ),
            ).solve()
          for (const value of probes(range)) {
            const again = solveAt(value)
            const expected = answer.objective + price * (value - bound)
            expect(again.status === 'optimal' && near(again.objective, expected), label).toBe(true)
          }
          if (!hasOnePoint(answer)) continue
          for (const beyond of beyondEnds(range)) {
            const again = solveAt(beyond)
            const expected = answer.objective + price * (beyond - bound)
            tried++
            if (again.status !== 'optimal' || again.objective > expected + 1e-9) ends++
          }
        }
      })
    }
    expect(tried).toBeGreaterThan(500)
    expect(ends).toBe(tried)
  })
})

describe('ranging', () => {
  test('refuses a program that has changed since it was solved', () => {
    const { simplex } = optimum(blendInstance(0, { kind: 'plain' }).program)
    simplex.setRowBounds(0, 99, 99)
    expect(() => boundRange(simplex, { kind: 'row', index: 0 }, 'lower')).toThrow(
      'solve it to optimality first',
    )
  })
})

/** Whether every nonbasic variable has a price: then no other point is optimal. */
function hasOnePoint({ duals, reducedCosts }: Optimal): boolean {
  const priced = [...duals, ...reducedCosts].filter((price) => Math.abs(price) > 1e-9)
  return priced.length >= reducedCosts.length
}

function beyondEnds({ lower: least, upper: most }: Bounds): number[] {
  return [
    least - BEYOND * Math.max(1, Math.abs(least)),
    most + BEYOND * Math.max(1, Math.abs(most)),
  ].filter(Number.isFinite)
}
