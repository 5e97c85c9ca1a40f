import { describe, expect, test } from 'vitest'
import { vectorSurface } from '../../../../src/domain/lp/pareto/vector-surface'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { blendInstance } from '../../../generator/random-programs'
import { costOf, type Finite, product, widthsOf } from './faults'

/*
 * Two objectives go by parametric passes, three by inner approximation: two programs that share nothing
 * but the simplex. A third objective made of the first two adds nothing to what is unbeaten, so both
 * must find the same.
 */
const PROGRAMS = 48

type Pair = readonly [Float64Array, Float64Array]

function programs() {
  return Array.from({ length: PROGRAMS }, (_, seed) => {
    const { name, program, expectation } = blendInstance(seed)
    const measure = Float64Array.from(program.rows[1]?.coefficients ?? [], (one) => -one)
    return { name, program, expectation, pair: [Float64Array.from(program.cost), measure] as Pair }
  }).filter(({ expectation }) => expectation === 'feasible')
}

function finite(surface: ReturnType<typeof vectorSurface>): Finite {
  if (surface.status === 'infeasible') throw new Error('Expected a surface')
  return surface
}

/** Corners of one surface without a match among another's, the first two objectives compared. */
function unmatched(one: Finite, other: Finite, widths: readonly number[]): (readonly number[])[] {
  return one.corners
    .map(({ values }) => values)
    .filter((a) => {
      return !other.corners.some(({ values: b }) =>
        widths.every((width, i) => Math.abs((a[i] ?? NaN) - (b[i] ?? NaN)) <= 2e-9 * width),
      )
    })
}

describe('two objectives and a third made of them', { timeout: 60_000 }, () => {
  test('have the same unbeaten corners', () => {
    const all = programs()
    for (const { name, program, pair } of all) {
      const third = costOf([0.3, 0.7], pair)
      const two = finite(vectorSurface(new Simplex(program), pair))
      const three = finite(vectorSurface(new Simplex(program), [...pair, third]))
      const widths = widthsOf(program, pair)
      expect(three.corners.length, name).toBe(two.corners.length)
      expect(unmatched(two, three, widths), name).toEqual([])
      expect(three.faces.length, name).toBe(two.faces.length)
    }
    expect(all.length).toBeGreaterThan(PROGRAMS / 2)
  })

  test('have hulls with the same corners, the larger one flat', () => {
    for (const { name, program, pair } of programs()) {
      const third = costOf([1, -1], pair)
      const two = finite(vectorSurface(new Simplex(program), pair, { wholeHull: true }))
      const three = finite(
        vectorSurface(new Simplex(program), [...pair, third], { wholeHull: true }),
      )
      const widths = widthsOf(program, pair)
      expect(three.dimension, name).toBe(two.dimension)
      expect(three.corners.length, name).toBe(two.corners.length)
      expect(unmatched(two, three, widths), name).toEqual([])
      expect(three.faces.length, name).toBe(two.faces.length)
    }
  })
})

describe('the efficient side and the whole hull', { timeout: 60_000 }, () => {
  test('agree: a corner of the hull is efficient if no mixture of the others beats it', () => {
    for (const { name, program, pair } of programs()) {
      const side = finite(vectorSurface(new Simplex(program), pair))
      const hull = finite(vectorSurface(new Simplex(program), pair, { wholeHull: true }))
      expect(unmatched(side, hull, widthsOf(program, pair)), name).toEqual([])
      for (const { weights } of side.faces) {
        const least = Math.min(...hull.corners.map(({ values }) => product(weights, values)))
        const own = Math.min(...side.corners.map(({ values }) => product(weights, values)))
        const [first = NaN, second = NaN] = widthsOf(program, pair)
        const scale = Math.hypot((weights[0] ?? NaN) * first, (weights[1] ?? NaN) * second)
        expect(Math.abs(least - own) / scale, name).toBeLessThanOrEqual(1e-9)
      }
    }
  })
})
