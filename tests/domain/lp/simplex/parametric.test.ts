import { describe, expect, test } from 'vitest'
import { parametricCost, type CostPass } from '../../../../src/domain/lp/simplex/parametric-cost'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { generalProgram } from '../../../generator/general-programs'
import { blendInstance } from '../../../generator/random-programs'
import { costsOf, feasibleSetOf, readCases, type VectorProblem } from './case-files'

/** Of the exact lists, which were computed in fractions. */
const RELATIVE = 1e-9

type Image = readonly [number, number]

function near(a: number, b: number, tolerance = RELATIVE): boolean {
  return Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a), Math.abs(b))
}

function pair(costs: readonly number[][]): [number[], number[]] {
  const [first, second] = costs
  if (!first || !second || costs.length !== 2) throw new Error(`${costs.length} costs, not two`)
  return [first, second]
}

function pass(
  program: LinearProgram,
  first: readonly number[],
  second: readonly number[],
): CostPass {
  const result = parametricCost(new Simplex(program), first, second)
  if (!('corners' in result)) throw new Error(`the first cost is ${result.status}`)
  return result
}

function images({ corners }: CostPass): Image[] {
  return corners.map(({ first, second }) => [first, second])
}

function expectSameImages(found: readonly Image[], truth: readonly Image[], label: string): void {
  expect(found.length, `${label}: ${JSON.stringify(found)} for ${JSON.stringify(truth)}`).toBe(
    truth.length,
  )
  found.forEach(([first, second], k) => {
    expect(near(first, truth[k]?.[0] ?? NaN) && near(second, truth[k]?.[1] ?? NaN), label).toBe(
      true,
    )
  })
}

/**
 * Dichotomic search, the plain way to the same corners: both lexicographic ends, then the optimum
 * for the weights of each neighbouring pair's line until it lies on the line.
 * Y.P. Aneja, K.P.K. Nair, Management Science 25 (1979) 73-78.
 */
function dichotomic(
  program: LinearProgram,
  first: readonly number[],
  second: readonly number[],
): Image[] {
  const image = (weights: Image): Image => {
    const cost = first.map((value, j) => weights[0] * value + weights[1] * (second[j] ?? NaN))
    return imageOfOptimum({ ...program, cost }, first, second)
  }
  const left = lexicographic(program, first, second)
  const [b, a] = lexicographic(program, second, first)
  const right: Image = [a, b]
  const between = (from: Image, to: Image): Image[] => {
    const weights: Image = [from[1] - to[1], to[0] - from[0]]
    const scale = Math.abs(weights[0]) + Math.abs(weights[1])
    if (scale <= 1e-9) return []
    const middle = image([weights[0] / scale, weights[1] / scale])
    const value = (point: Image): number => (weights[0] * point[0] + weights[1] * point[1]) / scale
    const size = Math.max(1, Math.abs(value(from)))
    if (value(from) - value(middle) <= 1e-10 * size) return []
    return [...between(from, middle), middle, ...between(middle, to)]
  }
  const same = near(left[0], right[0]) && near(left[1], right[1])
  return same ? [left] : [left, ...between(left, right), right]
}

/** Least `second` among the optima of `first`: two solves, the second with the first as a row. */
function lexicographic(
  program: LinearProgram,
  first: readonly number[],
  second: readonly number[],
): Image {
  const simplex = new Simplex({ ...program, cost: first })
  const best = simplex.solve()
  if (best.status !== 'optimal') throw new Error(best.status)
  simplex.addRow({ coefficients: first, lower: -Infinity, upper: best.objective })
  simplex.setCost(second)
  const end = simplex.solve()
  if (end.status !== 'optimal') throw new Error(end.status)
  return [best.objective, end.objective]
}

function imageOfOptimum(
  program: LinearProgram,
  first: readonly number[],
  second: readonly number[],
): Image {
  const outcome = new Simplex(program).solve()
  if (outcome.status !== 'optimal') throw new Error(outcome.status)
  const value = (cost: readonly number[]): number =>
    cost.reduce((sum, c, j) => sum + c * (outcome.x[j] ?? NaN), 0)
  return [value(first), value(second)]
}

describe('the parametric objective', () => {
  const published = readCases<VectorProblem>('multiobjective').filter(
    (problem) => problem.objectives.length === 2 && problem.name !== 'two-bensolve-ex01',
  )

  test.each(published)('finds exactly the corners of $name ($source)', (problem) => {
    const [first, second] = pair(costsOf(problem))
    const found = pass(feasibleSetOf(problem), first, second)
    const signs = problem.objectives.map(({ sense }) => (sense === 'min' ? 1 : -1))
    const truth = problem.vertices
      .map(({ y }): Image => [(y[0] ?? NaN) * (signs[0] ?? 1), (y[1] ?? NaN) * (signs[1] ?? 1)])
      .sort((a, b) => a[0] - b[0])
    expect(found.status).toBe('complete')
    expectSameImages(images(found), truth, problem.name)
  })

  test('stops at weight 1/2 on two-bensolve-ex01, beyond which nothing bounds it (bensolve ex01)', () => {
    const problem = readCases<VectorProblem>('multiobjective').find(
      ({ name }) => name === 'two-bensolve-ex01',
    )
    if (!problem) throw new Error('two-bensolve-ex01 is not on file')
    const [first, second] = pair(costsOf(problem))
    const found = pass(feasibleSetOf(problem), second, first)
    expect(found.status).toBe('unbounded')
    expect(found.reaches).toBeCloseTo(0.5, 12)
    expectSameImages(
      images(found),
      [
        [4, 0],
        [6, -6],
      ],
      problem.name,
    )
    const other = parametricCost(new Simplex(feasibleSetOf(problem)), first, second)
    expect(other.status).toBe('unbounded')
    expect(other).not.toHaveProperty('corners')
  })

  test('finds the corners that dichotomic search finds, on 400 blends of all kinds', () => {
    let corners = 0
    for (let seed = 0; seed < 400; seed++) {
      const { program } = blendInstance(seed, { oils: 25 })
      const first = Array.from(program.cost)
      const second = Array.from(program.rows[1]?.coefficients ?? [], (value) => -value)
      if (new Simplex(program).solve().status !== 'optimal') continue
      const found = pass(program, first, second)
      expect(found.status).toBe('complete')
      expectSameImages(images(found), dichotomic(program, first, second), `seed ${seed}`)
      corners += found.corners.length
    }
    expect(corners).toBeGreaterThan(500)
  })

  test('covers the weights from 0 to 1 without gap, each corner best at both its ends', () => {
    for (let seed = 0; seed < 100; seed++) {
      const { program } = blendInstance(seed, { kind: 'plain', oils: 25 })
      const first = Array.from(program.cost)
      const second = Array.from(program.rows[2]?.coefficients ?? [])
      const { corners } = pass(program, first, second)
      expect(corners[0]?.from).toBe(0)
      expect(corners.at(-1)?.to).toBe(1)
      corners.forEach((corner, k) => {
        const next = corners[k + 1]
        if (next) expect(next.from).toBe(corner.to)
        for (const weight of [corner.from, corner.to]) {
          const cost = first.map((c, j) => (1 - weight) * c + weight * (second[j] ?? NaN))
          const outcome = new Simplex({ ...program, cost }).solve()
          const value = (1 - weight) * corner.first + weight * corner.second
          expect(outcome.status === 'optimal' && near(outcome.objective, value), `${seed}`).toBe(
            true,
          )
        }
      })
    }
  })

  test('agrees with solving at 21 weights on general programs, unbounded ones included', () => {
    let unbounded = 0
    for (let seed = 0; seed < 600; seed++) {
      const program = generalProgram(seed)
      const first = Array.from(program.cost)
      const second = Array.from(program.rows[0]?.coefficients ?? [])
      const result = parametricCost(new Simplex(program), first, second)
      const found = 'corners' in result ? result : { corners: [], reaches: -1 }
      for (let k = 0; k <= 20; k++) {
        const weight = k / 20
        const cost = first.map((c, j) => (1 - weight) * c + weight * (second[j] ?? NaN))
        const outcome = new Simplex({ ...program, cost }).solve()
        const corner = found.corners.find(({ from, to }) => from <= weight && weight <= to)
        const label = `seed ${seed}, weight ${weight}`
        if (weight > found.reaches + 1e-9) {
          // Infeasible at all weights, or unbounded from `reaches` on.
          expect(corner, label).toBeUndefined()
          if (k > 0 && result.status === 'unbounded' && found.reaches >= 0) {
            expect(outcome.status, label).toBe('unbounded')
            unbounded++
          }
        } else if (weight < found.reaches - 1e-9 && corner) {
          const value = (1 - weight) * corner.first + weight * corner.second
          expect(outcome.status === 'optimal' && near(outcome.objective, value), label).toBe(true)
        } else if (weight < found.reaches - 1e-9) expect.fail(`${label}: no corner`)
      }
    }
    expect(unbounded).toBeGreaterThan(100)
  })
})
