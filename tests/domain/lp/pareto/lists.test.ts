import { describe, expect, test } from 'vitest'
import { vectorSurface } from '../../../../src/domain/lp/pareto/vector-surface'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { costsOf, feasibleSetOf, readCases, type VectorProblem } from '../simplex/case-files'
import { costOf, product } from './faults'
import { leastOfEach } from './reference'

/*
 * Exact lists of non-dominated extreme points. Basis: exhaustive enumeration of bases in fractions; each
 * file names the source of its data (examples of bensolve by A. Löhne and B. Weißing; M. Ehrgott,
 * Multicriteria Optimization, 2005; or invented).
 */
const RELATIVE = 1e-9

const lists = readCases<VectorProblem>('multiobjective')

function surfaceOf(problem: VectorProblem) {
  const objectives = costsOf(problem).map((cost) => Float64Array.from(cost))
  const surface = vectorSurface(new Simplex(feasibleSetOf(problem)), objectives)
  if (surface.status === 'infeasible') throw new Error(`${problem.name} has solutions`)
  return { surface, objectives }
}

/** Values of a vertex with those to be maximised negated, as the surface has them. */
function toMinimise({ objectives }: VectorProblem, values: readonly number[]): number[] {
  return values.map((value, i) => (objectives[i]?.sense === 'max' ? -value : value))
}

function isNear(a: readonly number[], b: readonly number[]): boolean {
  return a.every((one, i) => {
    const other = b[i] ?? NaN
    return Math.abs(one - other) <= RELATIVE * Math.max(1, Math.abs(other))
  })
}

test('all six lists are there', () => {
  expect(lists.length).toBe(6)
})

describe.each(lists.map((problem) => [problem.name, problem] as const))('%s', (_, problem) => {
  const { surface, objectives } = surfaceOf(problem)
  const truth = problem.vertices.map(({ y }) => toMinimise(problem, y))

  test(`has ${problem.vertices.length} corners, as the list of: ${problem.source}`, () => {
    expect(surface.corners.length).toBe(truth.length)
    const missing = truth.filter((y) => !surface.corners.some(({ values }) => isNear(values, y)))
    expect(missing).toEqual([])
  })

  test('has every corner confirmed by HiGHS in its own direction, where it alone is least', () => {
    const least = leastOfEach(
      feasibleSetOf(problem),
      surface.corners.map(({ weights }) => costOf(weights, objectives)),
    )
    surface.corners.forEach((corner, k) => {
      const own = product(corner.weights, corner.values)
      expect(isNear([own], [least[k] ?? NaN]), `corner ${k}`).toBe(true)
      const others = surface.corners.filter((other) => other !== corner)
      for (const { values } of others) expect(product(corner.weights, values)).toBeGreaterThan(own)
    })
  })

  test('has every face confirmed by HiGHS, with no weight below zero', () => {
    const least = leastOfEach(
      feasibleSetOf(problem),
      surface.faces.map(({ weights }) => costOf(weights, objectives)),
    )
    surface.faces.forEach(({ corners, weights }, k) => {
      expect(Math.min(...weights)).toBeGreaterThanOrEqual(0)
      for (const place of corners) {
        const value = product(weights, surface.corners[place]?.values ?? [])
        expect(isNear([value], [least[k] ?? NaN]), `face ${k}, corner ${place}`).toBe(true)
      }
    })
  })
})

test('an unbounded list is called so, with the direction in which it has no end', () => {
  const problem = lists.find(({ name }) => name === 'two-bensolve-ex01')
  if (!problem) throw new Error('The list is missing')
  const { surface } = surfaceOf(problem)
  expect(surface.status).toBe('unbounded')
  // Its upper image goes on in the direction (-1, 1), by hand: x2 may grow for ever.
  const rays = surface.status === 'unbounded' ? surface.rays : []
  expect(rays.length).toBe(1)
  expect(rays[0]?.[0]).toBeCloseTo(-Math.SQRT1_2, 12)
  expect(rays[0]?.[1]).toBeCloseTo(Math.SQRT1_2, 12)
})
