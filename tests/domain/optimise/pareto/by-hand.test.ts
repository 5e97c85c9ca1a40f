import { describe, expect, test } from 'vitest'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import {
  surfaceOf,
  type SurfaceAxis,
  type SurfaceOptions,
} from '../../../../src/domain/optimise/pareto/blend-surface'
import { libraryOfValues } from '../../blend/stub-library'
import type { FoundSurface } from './brief-surfaces'

/*
 * Surfaces known by drawing the oils on paper: without limits a region is the hull of its oils. Measures
 * are named p, q, r, s; more of each is wanted unless said otherwise.
 */

type Place = readonly number[]
type Oils = Readonly<Record<string, Place>>

const NAMES = ['p', 'q', 'r', 's']

function spaceOf(oils: Oils, changes: Partial<Brief> = {}): BlendSpace {
  const library = libraryOfValues(
    Object.fromEntries(
      Object.entries(oils).map(([oil, place]) => [
        oil,
        Object.fromEntries(place.map((value, i) => [NAMES[i] ?? '', value])),
      ]),
    ),
  )
  const shelf = Object.fromEntries(Object.keys(oils).map((oil) => [oil, {}]))
  return new BlendSpace(
    { oils: shelf, groups: [], measures: {}, goal: { maximise: 'p' }, ...changes },
    library,
  )
}

function axesOf(oils: Oils, wanted: Readonly<Record<string, 'less'>> = {}): SurfaceAxis[] {
  const count = Object.values(oils)[0]?.length ?? 0
  return NAMES.slice(0, count).map((measure) => ({ measure, wanted: wanted[measure] ?? 'more' }))
}

function found(
  oils: Oils,
  options: SurfaceOptions & { wanted?: Readonly<Record<string, 'less'>> } = {},
  changes: Partial<Brief> = {},
): FoundSurface {
  const surface = surfaceOf(spaceOf(oils, changes), axesOf(oils, options.wanted), options)
  if (surface.status === 'infeasible') throw new Error('Expected a surface')
  return surface
}

/** Vertices as the oils they consist of, for surfaces whose vertices are single oils. */
function oilsAt({ vertices }: FoundSurface): string[] {
  return vertices.map(({ blend }) => Object.keys(blend).join('+'))
}

/** Facets by the oils at their vertices, each sorted, all sorted. */
function facetsOf(surface: FoundSurface): string[] {
  const names = oilsAt(surface)
  return surface.facets
    .map((facet) =>
      facet
        .map((k) => names[k] ?? '?')
        .sort()
        .join(''),
    )
    .sort()
}

const WHOLE = { wholeHull: true } as const

describe('a single point', () => {
  const oils = { a: [10, 20, 30] }

  test('is one vertex that is its own largest face', () => {
    const surface = found(oils)
    expect(surface.vertices.map(({ measures }) => measures)).toEqual([{ p: 10, q: 20, r: 30 }])
    expect(surface.facets).toEqual([[0]])
    expect(surface.dimension).toBe(0)
  })

  test('has a whole hull without facets', () => {
    const surface = found(oils, WHOLE)
    expect(oilsAt(surface)).toEqual(['a'])
    expect(surface.facets).toEqual([])
    expect(surface.dimension).toBe(0)
  })

  test('is what one oil leaves that is best on all axes', () => {
    expect(oilsAt(found({ a: [1, 5, 2], best: [9, 9, 9], c: [4, 9, 9] }))).toEqual(['best'])
  })

  test('is what many oils of the same figures leave', () => {
    const twins = { a: [10.1, 20.3, 5.7, 1], b: [10.1, 20.3, 5.7, 1], c: [10.1, 20.3, 5.7, 1] }
    expect(found(twins).vertices.length).toBe(1)
    expect(found(twins, WHOLE).dimension).toBe(0)
  })
})

describe('a line', () => {
  const oils = { a: [10, 0, 5], m: [6, 4, 5], b: [0, 10, 5] }

  test('has its two ends for vertices and no point between', () => {
    const surface = found(oils)
    expect(oilsAt(surface).sort()).toEqual(['a', 'b'])
    expect(facetsOf(surface)).toEqual(['ab'])
    expect(surface.dimension).toBe(1)
  })

  test('has its two ends for the facets of its hull', () => {
    const surface = found(oils, WHOLE)
    expect(facetsOf(surface)).toEqual(['a', 'b'])
    expect(surface.dimension).toBe(1)
  })

  test('that rises on all axes leaves its best end', () => {
    expect(oilsAt(found({ a: [1, 2, 3], b: [4, 8, 12] }))).toEqual(['b'])
    expect(
      oilsAt(
        found({ a: [1, 2, 3], b: [4, 8, 12] }, { wanted: { p: 'less', q: 'less', r: 'less' } }),
      ),
    ).toEqual(['a'])
  })

  test('is what a measure and its double leave, one wanted the other way', () => {
    const doubled = { a: [1, 2, 9], b: [3, 6, 9], c: [2, 4, 9] }
    const surface = found(doubled, { wanted: { q: 'less' } })
    expect(facetsOf(surface)).toEqual(['ab'])
  })
})

describe('a flat region', () => {
  /** A square whose third measure is the sum of the others, with an oil on its rim and one inside. */
  const square = {
    a: [0, 0, 0],
    b: [10, 0, 10],
    c: [10, 10, 20],
    d: [0, 10, 10],
    rim: [10, 4, 14],
    in: [3, 3, 6],
  }

  test('has a hull of its own dimension, with edges for facets', () => {
    const surface = found(square, WHOLE)
    expect(surface.dimension).toBe(2)
    expect(oilsAt(surface).sort()).toEqual(['a', 'b', 'c', 'd'])
    expect(facetsOf(surface)).toEqual(['ab', 'ad', 'bc', 'cd'])
  })

  test('in four dimensions has one too', () => {
    const cube = Object.fromEntries(
      [...Array(8).keys()].map((k) => {
        const [x, y, z] = [10 * (k & 1), 5 * (k & 2), 2 * (k & 4)]
        return [`oil${k}`, [x, y, z, x + y + z]]
      }),
    )
    const surface = found(cube, WHOLE)
    expect(surface.dimension).toBe(3)
    expect(surface.vertices.length).toBe(8)
    expect(surface.facets.map((facet) => facet.length)).toEqual(Array(6).fill(4))
  })

  test('is what a wish of no width leaves', () => {
    const surface = found({ a: [0, 0, 0], b: [10, 0, 0], c: [0, 10, 0], d: [0, 0, 10] }, WHOLE, {
      measures: { r: { min: 5, max: 5 } },
    })
    // By hand: the triangle of a, b, c at half size, lifted to 5.
    const places = surface.vertices.map(({ measures: { p = NaN, q = NaN, r = NaN } }) =>
      [p, q, r].map((one) => Number(one.toFixed(9))).join(),
    )
    expect(places.sort()).toEqual(['0,0,5', '0,5,5', '5,0,5'])
    expect(surface.dimension).toBe(2)
  })
})

describe('the side that nothing beats', () => {
  const corners = { a: [10, 0, 0], b: [0, 10, 0], c: [0, 0, 10] }

  test('is the triangle of three specialists, each worth as much', () => {
    const surface = found(corners)
    expect(facetsOf(surface)).toEqual(['abc'])
    for (const rate of surface.normals[0] ?? []) expect(rate).toBeCloseTo(1 / Math.sqrt(3), 12)
  })

  test('is three triangles with a generalist before them', () => {
    expect(facetsOf(found({ ...corners, d: [4, 4, 4] }))).toEqual(['abd', 'acd', 'bcd'])
  })

  test('passes over an oil in the middle of a face or of an edge', () => {
    const more = { ...corners, face: [5, 2.5, 2.5], edge: [0, 5, 5], behind: [3, 3, 3] }
    expect(facetsOf(found(more))).toEqual(['abc'])
  })

  test('has an edge for a face where it is no thicker, beside a triangle where it is', () => {
    // a and b have most of r, and p + q is most between them: nothing but these two rates holds the edge
    // ab, so no triangle at it is unbeaten. b, d and e lie on p + 1.5 q + 0.5 r = 30, where a has 25.
    const oils = { a: [20, 0, 10], b: [10, 10, 10], d: [5, 14, 8], e: [1.5, 16, 9] }
    expect(facetsOf(found(oils))).toEqual(['ab', 'bde'])
    expect(facetsOf(found({ a: [9, 5, 0], e: [10, 0, 0], c: [0, 0, 0] }))).toEqual(['ae'])
  })

  test('is a polygon where four axes leave no more', () => {
    const flat = { a: [10, 0, 0, 5], b: [0, 10, 0, 5], c: [0, 0, 10, 5], d: [1, 1, 1, 5] }
    const surface = found(flat)
    expect(facetsOf(surface)).toEqual(['abc'])
    expect(surface.dimension).toBe(2)
    expect(Math.min(...(surface.normals[0] ?? []))).toBeGreaterThan(0)
  })

  test('counts an end only if nothing equals it on one axis and betters it on another', () => {
    expect(oilsAt(found({ a: [10, 0], b: [10, 5], c: [0, 20], d: [3, 20] })).sort()).toEqual([
      'b',
      'd',
    ])
    expect(oilsAt(found({ a: [10, 0, 3], b: [10, 5, 3], c: [0, 20, 3] })).sort()).toEqual([
      'b',
      'c',
    ])
  })

  test('turns to the other side with the axes', () => {
    const wanted = { p: 'less', q: 'less', r: 'less' } as const
    expect(facetsOf(found({ ...corners, o: [0, 0, 0] }, { wanted }))).toEqual(['o'])
    expect(facetsOf(found({ a: [1, 5, 5], b: [5, 1, 5], c: [5, 5, 1] }, { wanted }))).toEqual([
      'abc',
    ])
  })

  test('tells at what rates the axes trade', () => {
    const surface = found({ a: [0, 10], b: [20, 0] })
    const [x = NaN, y = NaN] = surface.normals[0] ?? []
    // By hand: 20 of p cost 10 of q.
    expect(x / y).toBeCloseTo(10 / 20, 12)
    expect(Math.hypot(x, y)).toBeCloseTo(1, 12)
  })
})

describe('a whole hull', () => {
  test('of four oils is a tetrahedron whose facets turn outwards', () => {
    const oils = { a: [0, 0, 0], b: [10, 0, 0], c: [0, 10, 0], d: [0, 0, 10] }
    const surface = found(oils, WHOLE)
    expect(facetsOf(surface)).toEqual(['abc', 'abd', 'acd', 'bcd'])
    expectOutwardRings(surface)
  })

  test('of eight oils is a box with six faces of four, in order around each', () => {
    const box = Object.fromEntries(
      [...Array(8).keys()].map((k) => [`oil${k}`, [k & 1, 5 * (k & 2), 20 * (k & 4)]]),
    )
    const surface = found(box, WHOLE)
    expect(surface.facets.map((facet) => facet.length)).toEqual(Array(6).fill(4))
    expectOutwardRings(surface)
    const edges = new Set(
      surface.facets.flatMap((facet) => facet.map((k, i) => `${k}-${facet[(i + 1) % 4]}`)),
    )
    // Each of 12 edges is walked once in either way, so no face is crossed by its diagonal.
    expect(edges.size).toBe(24)
  })

  test('runs counter-clockwise with two axes, whichever way is wanted', () => {
    const oils = { a: [0, 0], b: [10, 0], c: [10, 10], d: [0, 10] }
    for (const wanted of [{}, { p: 'less' }, { q: 'less' }] as Record<string, 'less'>[]) {
      const ring = oilsAt(found(oils, { ...WHOLE, wanted })).join('')
      expect(`${ring}${ring}`).toContain('abcd')
    }
  })
})

describe('limits and wishes', () => {
  const oils = { a: [0, 0, 0], b: [10, 0, 0], c: [0, 10, 0], d: [0, 0, 10] }

  test('no blend is said to be none', () => {
    const groups = [{ name: 'clash', oils: ['a', 'b', 'c', 'd'], max: 90 }]
    expect(surfaceOf(spaceOf(oils, { groups }), axesOf(oils))).toEqual({ status: 'infeasible' })
    expect(surfaceOf(spaceOf(oils, { groups }), axesOf(oils), WHOLE)).toEqual({
      status: 'infeasible',
    })
  })

  test('wishes on the axes bound the surface, or are left out on request and put back', () => {
    const space = spaceOf(oils, { measures: { p: { max: 4 } } })
    const most = (options: SurfaceOptions) => {
      const surface = surfaceOf(space, axesOf(oils), options)
      if (surface.status === 'infeasible') throw new Error('Expected a surface')
      return Math.max(...surface.vertices.map(({ measures }) => measures.p ?? NaN))
    }
    expect(most({})).toBeCloseTo(4, 9)
    expect(most({ withoutWishesOnAxes: true })).toBeCloseTo(10, 9)
    expect(most(WHOLE)).toBeCloseTo(4, 9)
  })

  test('fewer than two axes, more than four, or one twice are refused with the reason', () => {
    const [p, q] = axesOf(oils)
    if (!p || !q) throw new Error('Axes are missing')
    expect(() => surfaceOf(spaceOf(oils), [p])).toThrow('2 to 4 axes; 1 given')
    expect(() => surfaceOf(spaceOf(oils), [p, q, p])).toThrow('Measure p is on two axes')
  })
})

/** Expects three successive vertices of every facet to turn left as seen from where its normal points. */
function expectOutwardRings({ axes, vertices, facets, normals }: FoundSurface): void {
  const at = (k: number) => axes.map(({ measure }) => vertices[k]?.measures[measure] ?? NaN)
  facets.forEach((facet, number) => {
    facet.forEach((from, i) => {
      const [a, b, c] = [from, facet[(i + 1) % facet.length], facet[(i + 2) % facet.length]].map(
        (k) => at(k ?? NaN),
      )
      const [u, v] = [minus(b, a), minus(c, b)]
      const turn = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]
      const facing = turn.reduce((sum, one, k) => sum + one * (normals[number]?.[k] ?? NaN), 0)
      expect(facing).toBeGreaterThan(0)
    })
  })
}

function minus(a: readonly number[] = [], b: readonly number[] = []): [number, number, number] {
  const [x = NaN, y = NaN, z = NaN] = a.map((one, i) => one - (b[i] ?? NaN))
  return [x, y, z]
}
