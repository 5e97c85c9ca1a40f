import { describe, expect, test } from 'vitest'
import { AccuracyError, Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { ProgramError, type LinearProgram } from '../../../../src/domain/lp/program'

/** Figures worked by hand are exact in binary or nearly so. */
const DIGITS = 12

function solved(program: LinearProgram) {
  const simplex = new Simplex(program)
  return { simplex, outcome: simplex.solve() }
}

/** Two oils that add up to 100: 3 a unit and 5 a unit, the cheap one limited. By hand throughout. */
const BLEND: LinearProgram = {
  cost: [3, 5],
  lower: [0, 0],
  upper: [40, 100],
  rows: [{ coefficients: [1, 1], lower: 100, upper: 100 }],
}

describe('an optimum', () => {
  test('of two oils uses the cheap one to its limit: 40 · 3 + 60 · 5 = 420', () => {
    const { outcome } = solved(BLEND)
    if (outcome.status !== 'optimal') throw new Error(outcome.status)
    expect(Array.from(outcome.x)).toEqual([40, 60])
    expect(outcome.objective).toBeCloseTo(420, DIGITS)
    expect(Array.from(outcome.rowValues)).toEqual([100])
  })

  test('prices the sum at 5, the dear oil, and the limit at 3 - 5 = -2 a unit', () => {
    const { outcome } = solved(BLEND)
    if (outcome.status !== 'optimal') throw new Error(outcome.status)
    expect(outcome.duals[0]).toBeCloseTo(5, DIGITS)
    expect(outcome.reducedCosts[0]).toBeCloseTo(-2, DIGITS)
    expect(outcome.reducedCosts[1]).toBe(0)
  })

  test('over a free variable meets the row that stops it: least x with x ≥ -7 as a row is -7', () => {
    const { outcome } = solved({
      cost: [1],
      lower: [-Infinity],
      upper: [Infinity],
      rows: [{ coefficients: [1], lower: -7, upper: Infinity }],
    })
    expect(outcome).toMatchObject({ status: 'optimal', objective: -7 })
  })

  test('without rows is at the bounds the costs like: 2 · 1 - 3 · 4 = -10', () => {
    const { outcome } = solved({ cost: [2, -3], lower: [1, 0], upper: [5, 4], rows: [] })
    expect(outcome).toMatchObject({ status: 'optimal', objective: -10 })
  })

  test('with a cost of zero is any feasible point, and costs nothing', () => {
    const { outcome } = solved({ ...BLEND, cost: [0, 0] })
    expect(outcome).toMatchObject({ status: 'optimal', objective: 0 })
  })

  test('accepts a range that its own optimum fills exactly: limits that cross by rounding', () => {
    const { simplex } = solved(BLEND)
    const row = simplex.addRow({ coefficients: [3, 5], lower: -Infinity, upper: 420 })
    simplex.setRowBounds(row, 420 * (1 + 1e-14), 420)
    const outcome = simplex.solve()
    expect(outcome.status === 'optimal' && outcome.objective).toBeCloseTo(420, 9)
  })
})

describe('an infeasible program', () => {
  test('carries Farkas weights: at most 40 + 40 where 100 are needed, a gap of 20', () => {
    const { outcome } = solved({ ...BLEND, upper: [40, 40] })
    if (outcome.status !== 'infeasible') throw new Error(outcome.status)
    expect(outcome.crossed).toBe(-1)
    expect(Math.abs(outcome.rowWeights[0] ?? NaN)).toBe(1)
    expect(outcome.gap).toBeCloseTo(20, DIGITS)
    expect(outcome).not.toHaveProperty('x')
  })

  test('names the variable whose bounds cross, 12 above 10', () => {
    const { outcome } = solved({ ...BLEND, lower: [0, 12], upper: [40, 10] })
    expect(outcome).toMatchObject({ status: 'infeasible', crossed: 1, gap: 2 })
  })

  test('names the row whose range crosses, counted on from the variables', () => {
    const { outcome } = solved({
      ...BLEND,
      rows: [{ coefficients: [1, 1], lower: 100, upper: 90 }],
    })
    expect(outcome).toMatchObject({ status: 'infeasible', crossed: 2, gap: 10 })
  })

  test('is infeasible, not unbounded, when the cost could fall for ever', () => {
    const { outcome } = solved({
      cost: [-1, 0],
      lower: [0, 0],
      upper: [Infinity, 1],
      rows: [{ coefficients: [0, 1], lower: 2, upper: Infinity }],
    })
    expect(outcome.status).toBe('infeasible')
  })

  test('can be mended and solved on', () => {
    const { simplex } = solved({ ...BLEND, upper: [40, 40] })
    simplex.setVariableBounds(1, 0, 60)
    expect(simplex.solve()).toMatchObject({ status: 'optimal', objective: 420 })
  })
})

describe('an unbounded program', () => {
  test('carries the ray: x and y rise together, since y - x may not exceed 1', () => {
    const { outcome } = solved({
      cost: [0, -1],
      lower: [0, 0],
      upper: [Infinity, Infinity],
      rows: [{ coefficients: [-1, 1], lower: -Infinity, upper: 1 }],
    })
    if (outcome.status !== 'unbounded') throw new Error(outcome.status)
    expect(Array.from(outcome.ray)).toEqual([1, 1])
  })
})

describe('a program with figures sixteen orders of magnitude apart', () => {
  test('is answered where rounding of the reduced costs alone stands beside the proof: nothing of both', () => {
    const program: LinearProgram = {
      cost: [-1800, 3],
      lower: [-1.2e5, -Infinity],
      upper: [Infinity, 1e7],
      rows: [
        { coefficients: [-80, 0.6], lower: -3.8e6, upper: Infinity },
        { coefficients: [0.01, -0.002], lower: -Infinity, upper: 2100 },
        { coefficients: [1.9e-5, -1.9e-7], lower: -0.23, upper: Infinity },
        { coefficients: [0, -6e-11], lower: -2.1e-4, upper: Infinity },
        { coefficients: [-8e-8, 0], lower: 0, upper: 0.0021 },
        { coefficients: [0, -1.9], lower: 0, upper: Infinity },
        { coefficients: [0, -160], lower: -Infinity, upper: 0 },
        { coefficients: [3e-11, 0], lower: -4.1e-6, upper: Infinity },
      ],
    }
    // By hand: rows 6 and 7 hold y to 0, row 5 keeps x from being more, and less x costs more.
    const outcome = new Simplex(program).solve()
    if (outcome.status !== 'optimal') throw new Error(outcome.status)
    expect(outcome.objective).toBeCloseTo(0, 9)
    for (const one of outcome.x) expect(one).toBeCloseTo(0, 9)
  })

  test('is given up as an error rather than answered without proof', () => {
    const program: LinearProgram = {
      cost: [2.6, -17_000],
      lower: [0, -Infinity],
      upper: [Infinity, 4.6e6],
      rows: [
        { coefficients: [-1.6e-5, 0], lower: 0, upper: Infinity },
        { coefficients: [-1.3e-11, -1.5e-9], lower: 0, upper: Infinity },
        { coefficients: [2000, 0], lower: -Infinity, upper: 370 },
      ],
    }
    expect(() => new Simplex(program).solve()).toThrow(AccuracyError)
  })
})

describe('a malformed program', () => {
  test.each([
    ['a cost that is not a number', { ...BLEND, cost: [3, NaN] }],
    ['a row of the wrong length', { ...BLEND, rows: [{ coefficients: [1], lower: 0, upper: 1 }] }],
    [
      'an infinite coefficient',
      { ...BLEND, rows: [{ coefficients: [1, Infinity], lower: 0, upper: 1 }] },
    ],
    ['a lower bound of Infinity', { ...BLEND, lower: [0, Infinity] }],
    ['a bound that is not a number', { ...BLEND, upper: [NaN, 1] }],
    ['too few bounds', { ...BLEND, upper: [1] }],
  ])('with %s is refused', (_what, program) => {
    expect(() => new Simplex(program)).toThrow(ProgramError)
  })

  test('cannot be reached through an index there is not', () => {
    const { simplex } = solved(BLEND)
    expect(() => {
      simplex.setVariableBounds(2, 0, 1)
    }).toThrow('There is no variable 2; use 0 to 1.')
    expect(() => {
      simplex.setRowBounds(-1, 0, 1)
    }).toThrow('There is no row -1; use 0 to 0.')
  })
})
