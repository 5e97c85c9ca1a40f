import { describe, expect, test } from 'vitest'
import { extremePoints } from '../../../../src/domain/lp/pareto/faces'
import { Frame } from '../../../../src/domain/lp/pareto/frame'
import { Hull } from '../../../../src/domain/lp/pareto/hull'
import { mergedFacets } from '../../../../src/domain/lp/pareto/merged'
import { Random } from '../../../generator/random'
import { gaussian } from './faults'

const TOLERANCE = 1e-9

type Point = readonly number[]

/** All points with coordinates from a list. */
function grid(coordinates: readonly number[], dimensions: number): Point[] {
  if (dimensions === 0) return [[]]
  const rest = grid(coordinates, dimensions - 1)
  return coordinates.flatMap((one) => rest.map((point) => [one, ...point]))
}

/** All points with two coordinates ±1 and the others 0. */
function twoOnes(dimensions: number): Point[] {
  return grid([-1, 0, 1], dimensions).filter((point) => {
    return point.filter((one) => one !== 0).length === 2
  })
}

function crossPolytope(dimensions: number): Point[] {
  return grid([-1, 0, 1], dimensions).filter((point) => {
    return point.filter((one) => one !== 0).length === 1
  })
}

/** Points of the moment curve (t, t², t³ …): their hull has the most facets that so many can have. */
function cyclic(count: number, dimensions: number): Point[] {
  return Array.from({ length: count }, (_, k) => {
    const t = k / (count - 1)
    return Array.from({ length: dimensions }, (_, power) => t ** (power + 1))
  })
}

function shuffled(points: readonly Point[], seed: number): Point[] {
  const random = new Random(seed)
  return points
    .map((point) => ({ point, key: random.next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ point }) => point)
}

/** The points turned by a random orthogonal matrix, so that faces are flat only up to rounding. */
function turned(points: readonly Point[], seed: number): Point[] {
  const random = new Random(seed)
  const size = points[0]?.length ?? 0
  const frame = new Frame(size)
  while (frame.axes.length < size)
    frame.add(Float64Array.from({ length: size }, () => gaussian(random)))
  return points.map((point) =>
    frame.axes.map((axis) => point.reduce((sum, one, i) => sum + one * (axis[i] ?? NaN), 0)),
  )
}

/** Hull of points with its facets put together; independent ones are taken first. */
function hullOf(points: readonly Point[]) {
  const vectors = points.map((point) => Float64Array.of(1, ...point))
  const first = new Frame(vectors[0]?.length ?? 0).addFarthest(vectors, TOLERANCE)
  const hull = new Hull(first.map((k) => vectors[k] ?? new Float64Array()))
  const solutions = first.map(() => new Float64Array())
  vectors.forEach((vector, k) => {
    if (first.includes(k) || hull.depthOf(vector) >= -TOLERANCE) return
    hull.add(vector)
    solutions.push(new Float64Array())
  })
  const growth = { hull, solutions, proved: new Set(hull.facets), complete: true }
  const facets = mergedFacets(growth, TOLERANCE)
  const extreme = extremePoints(facets, growth)
  const sizes = facets.map(({ on }) => on.filter((id) => extreme.has(id)).length)
  return { hull, extreme, facets, sizes }
}

/** What is told of a hull: its vertices, its facets, and how many vertices the facets have. */
const KNOWN: readonly (readonly [
  string,
  Point[],
  vertices: number,
  facets: number,
  each: number,
])[] = [
  ['a square with its middles', grid([0, 0.5, 1], 2), 4, 4, 2],
  ['a cube', grid([0, 1], 3), 8, 6, 4],
  ['a cube with points on its edges, faces and inside', grid([0, 0.25, 0.5, 1], 3), 8, 6, 4],
  ['an octahedron', crossPolytope(3), 6, 8, 3],
  ['a tesseract', grid([0, 1], 4), 16, 8, 8],
  ['a tesseract with points all over it', grid([0, 0.5, 1], 4), 16, 8, 8],
  ['a 16-cell', crossPolytope(4), 8, 16, 4],
  ['a 24-cell', twoOnes(4), 24, 24, 6],
  // n (n - 3) / 2 facets: P. McMullen, Mathematika 17 (1970) 179-184.
  ['a cyclic polytope of 12 points', cyclic(12, 4), 12, 54, 4],
]

describe('the hull of known polytopes (H.S.M. Coxeter, Regular Polytopes, tables I and II)', () => {
  test.each(KNOWN)('%s', (_, points, vertices, facets, each) => {
    for (const seed of [1, 2, 3]) {
      const found = hullOf(shuffled(points, seed))
      expect(found.extreme.size).toBe(vertices)
      expect(found.facets.length).toBe(facets)
      expect(new Set(found.sizes)).toEqual(new Set([each]))
    }
  })

  test.each(KNOWN)(
    '%s, turned so that rounding bends its faces',
    (_, points, vertices, facets, each) => {
      for (const seed of [4, 5, 6]) {
        const found = hullOf(turned(shuffled(points, seed), seed))
        expect(found.extreme.size).toBe(vertices)
        expect(found.facets.length).toBe(facets)
        expect(new Set(found.sizes)).toEqual(new Set([each]))
      }
    },
  )
})

describe('the hull of points without any order', () => {
  const random = new Random(11)
  const ball = Array.from({ length: 200 }, () =>
    Array.from({ length: 3 }, () => gaussian(random)),
  ).map((point) => point.map((one) => one / Math.hypot(...point)))

  test('has every point of a sphere for a vertex, and by Euler two faces more than edges less vertices', () => {
    const { extreme, facets, sizes } = hullOf(ball)
    expect(extreme.size).toBe(ball.length)
    const edges = sizes.reduce((sum, one) => sum + one, 0) / 2
    expect(ball.length - edges + facets.length).toBe(2)
  })

  test('joins each facet with neighbours that share all but one of its generators', () => {
    for (const { on, neighbours } of hullOf(ball).hull.facets) {
      neighbours.forEach((neighbour, place) => {
        expect(neighbour.outgrown).toBe(false)
        const shared = on.filter((id) => neighbour.on.includes(id))
        expect(shared).toEqual(on.toSpliced(place, 1))
      })
    }
  })

  test('holds all points, to the last digit but a few', () => {
    const { hull } = hullOf(ball)
    for (const point of ball) {
      expect(hull.depthOf(Float64Array.of(1, ...point))).toBeGreaterThan(-1e-13)
    }
  })

  test('is not grown by a point within', () => {
    const { hull } = hullOf(ball)
    const before = hull.facets.length
    expect(hull.add(Float64Array.of(1, 0.1, 0.2, 0.3))).toEqual([])
    expect(hull.facets.length).toBe(before)
  })
})

test('points nearer to one another than any tolerance still fit together', () => {
  const random = new Random(17)
  const cluster = Array.from({ length: 60 }, () =>
    Array.from({ length: 4 }, () => 0.3 + 1e-12 * gaussian(random)),
  )
  const vectors = [...grid([0, 1], 4), ...cluster, ...turned(cluster, 3)].map((point) =>
    Float64Array.of(1, ...point),
  )
  const first = new Frame(5).addFarthest(vectors, TOLERANCE)
  const hull = new Hull(first.map((k) => vectors[k] ?? new Float64Array()))
  for (const vector of vectors.toReversed()) hull.add(vector)
  for (const facet of hull.facets) {
    expect(facet.neighbours.length).toBe(4)
    for (const neighbour of facet.neighbours) expect(neighbour.neighbours).toContain(facet)
    for (const generator of hull.generators)
      expect(facet.plane.sideOf(generator)).toBeGreaterThanOrEqual(0)
  }
})
