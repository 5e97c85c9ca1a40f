import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { withoutWishesOn } from '../../../../src/domain/optimise/brief/ranges'
import { CHECK_TOLERANCE } from '../../../../src/domain/optimise/space/verify'
import { attainableRegion } from '../../../../src/domain/optimise/map/attainable-region'
import type { Progress } from '../../../../src/domain/lp/pareto/grow'
import { surfaceOf, type SurfaceAxis } from '../../../../src/domain/optimise/pareto/blend-surface'
import { vectorSurface } from '../../../../src/domain/lp/pareto/vector-surface'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { blendInstance } from '../../../generator/random-programs'
import { Random } from '../../../generator/random'
import { sampleBriefs } from '../../../property/briefs'
import { axesFor, type FoundSurface } from './brief-surfaces'
import { costOf, missedBy, product, widthsOf } from '../../lp/pareto/faults'
import { leastOfEach } from '../../lp/pareto/reference'

const SEED = 77

/** A program whose surfaces have many corners: 40 oils, 8 measures, 3 groups. */
const { program } = blendInstance(2, { kind: 'plain', oils: 40, measures: 8, groups: 3 })
const objectives = [program.cost, ...program.rows.slice(1, 3).map((row) => row.coefficients)].map(
  (values, i) => Float64Array.from(values, (one) => (i === 0 ? one : -one)),
)

describe('a surface that is stopped', () => {
  const whole = finite(vectorSurface(new Simplex(program), objectives))

  function stoppedAfter(solves: number) {
    let asked = 0
    return finite(
      vectorSurface(new Simplex(program), objectives, { shouldStop: () => asked++ >= solves }),
    )
  }

  test('says that it is not complete, and is when it is let run', () => {
    expect(whole.complete).toBe(true)
    expect(whole.corners.length).toBeGreaterThan(20)
    expect(stoppedAfter(15).complete).toBe(false)
    expect(stoppedAfter(100_000)).toEqual(whole)
  })

  test('has only points of the true surface, more of them the longer it ran', () => {
    const sizes = [5, 15, 40].map((solves) => {
      const { corners, faces } = stoppedAfter(solves)
      const widths = widthsOf(program, objectives)
      // No face of the whole surface is overstepped, and every face given is one of it.
      const asked = faces.map(({ weights }) => weights)
      const least = leastOfEach(
        program,
        asked.map((weights) => costOf(weights, objectives)),
      )
      faces.forEach(({ corners: on, weights }, k) => {
        for (const place of on) {
          const value = product(weights, corners[place]?.values ?? [])
          const scale = Math.hypot(...weights.map((one, i) => one * (widths[i] ?? NaN)))
          expect(Math.abs(value - (least[k] ?? NaN)) / scale).toBeLessThanOrEqual(2e-9)
        }
      })
      return corners.length
    })
    expect(sizes).toEqual(sizes.toSorted((a, b) => a - b))
    expect(Math.max(...sizes)).toBeLessThan(whole.corners.length)
  })

  test('has told of its progress before every solve, always with something open', () => {
    const told: Progress[] = []
    vectorSurface(new Simplex(program), objectives, { onProgress: (one) => told.push(one) })
    expect(told.length).toBeGreaterThan(whole.corners.length)
    const points = told.map((one) => one.points)
    expect(points).toEqual(points.toSorted((a, b) => a - b))
    expect(points.at(-1)).toBeGreaterThanOrEqual(whole.corners.length)
    expect(Math.min(...told.map(({ open }) => open))).toBeGreaterThan(0)
  })
})

describe('unbounded programs', () => {
  /** x and y from 0 without end, x + y at least 1. */
  const endless: LinearProgram = {
    cost: [0, 0],
    lower: [0, 0],
    upper: [Infinity, Infinity],
    rows: [{ coefficients: [1, 1], lower: 1, upper: Infinity }],
  }
  const x = Float64Array.of(1, 0)
  const y = Float64Array.of(0, 1)

  test('have an efficient side all the same where that is bounded', () => {
    const side = finite(vectorSurface(new Simplex(endless), [x, y]))
    expect(side.status).toBe('optimal')
    expect(side.corners.map(({ values }) => values)).toEqual([
      [0, 1],
      [1, 0],
    ])
  })

  test('have no whole hull, only directions without end', () => {
    const hull = vectorSurface(new Simplex(endless), [x, y], { wholeHull: true })
    expect(hull).toMatchObject({ status: 'unbounded', corners: [], faces: [], complete: false })
  })

  test('have a corner where a line of values that never ends begins', () => {
    const side = finite(vectorSurface(new Simplex(endless), [x, x.map((one) => -one)]))
    expect(side.status).toBe('unbounded')
    expect(side.corners.map(({ values }) => values)).toEqual([[0, 0]])
  })

  test('have none where it has no beginning either', () => {
    const free = { ...endless, lower: [-Infinity, 0] }
    const line = finite(vectorSurface(new Simplex(free), [x, x.map((one) => -one)]))
    expect(line.status).toBe('unbounded')
    expect(line.corners).toEqual([])
  })
})

describe('the blends of a surface', { timeout: 60_000 }, () => {
  const briefs = sampleBriefs(40, SEED)

  test('reach the measures stated beside them', () => {
    for (const [k, brief] of briefs.entries()) {
      const space = new BlendSpace(brief, library)
      const surface = surfaceOf(space, axesFor(space, 3, k))
      if (surface.status === 'infeasible') continue
      for (const { measures, blend } of surface.vertices) {
        for (const [measure, value] of Object.entries(measures)) {
          const worth = space.perPercent(measure)
          const shares = space.oils.map((oil) => blend[oil] ?? 0)
          expect(Math.abs(product(worth, shares) - value)).toBeLessThan(CHECK_TOLERANCE)
        }
      }
    }
  })

  test('are the same whatever the space was asked before', () => {
    for (const [k, brief] of briefs.slice(0, 15).entries()) {
      const space = new BlendSpace(brief, library)
      const axes = axesFor(space, 2 + (k % 3), k)
      const fresh = surfaceOf(space, axes, { wholeHull: k % 2 === 0 })
      const random = new Random(k)
      for (let question = 0; question < 5; question++)
        space.least(space.oils.map(() => random.next()))
      expect(surfaceOf(space, axes, { wholeHull: k % 2 === 0 })).toEqual(fresh)
    }
  })

  test('together hold every point that nothing beats: it lies on one of the facets', () => {
    const found = briefs.flatMap((brief, k) => {
      const space = new BlendSpace(brief, library)
      const axes = axesFor(space, 2 + (k % 3), k)
      const surface = surfaceOf(space, axes)
      return surface.status === 'optimal' ? [farFromAll(space, axes, surface, k)] : []
    })
    expect(found.length).toBeGreaterThan(20)
    expect(found.flat()).toEqual([])
  })
})

/**
 * Random unbeaten points that lie on none of a surface's facets. Each is found apart from the surface: a
 * random mixture of its vertices or of the region's blends, bettered on all axes as far as it goes.
 */
function farFromAll(
  space: BlendSpace,
  axes: readonly SurfaceAxis[],
  { vertices, facets, normals }: FoundSurface,
  seed: number,
): string[] {
  const random = new Random(seed)
  const signs = axes.map(({ wanted }) => (wanted === 'more' ? 1 : -1))
  const worths = axes.map(({ measure }) => space.perPercent(measure))
  const widths = widthsOf(space.program, worths)
  const placeOf = (shares: ArrayLike<number>) => worths.map((worth) => product(worth, shares))
  return Array.from({ length: 20 }, (_, round) => {
    const start = placeOf(space.least(space.oils.map(() => random.next() - 0.5))?.x.slice() ?? [])
    axes.forEach(({ measure, wanted }, i) => {
      const { min = -Infinity, max = Infinity } = space.brief.measures[measure] ?? {}
      const [value = NaN, slack] = [start[i], 1e-12 * (widths[i] ?? NaN)]
      const better = wanted === 'more' ? { min: value - slack, max } : { min, max: value + slack }
      space.simplex.setRowBounds(space.rowOf(measure), better.min, better.max)
    })
    const cost = costOf(
      signs.map((sign, i) => -sign / (widths[i] ?? NaN)),
      worths,
    )
    const best = space.least(cost)
    space.restoreAll()
    if (!best) return ['no blend is as good as one that was found']
    const place = placeOf(best.x)
    const distances = facets.map((facet, k) => {
      const normal = normals[k] ?? []
      const first = vertices[facet[0] ?? NaN]
      const origin = axes.map(({ measure }) => first?.measures[measure] ?? NaN)
      const size = Math.hypot(...normal.map((one, i) => one * (widths[i] ?? NaN)))
      return Math.abs(product(normal, place) - product(normal, origin)) / size
    })
    const least = Math.min(...distances)
    return least <= 2e-9 ? [] : [`seed ${seed}, round ${round}: ${place.join()} is ${least} off`]
  }).flat()
}

describe('the attainable region of random briefs', { timeout: 60_000 }, () => {
  const axes = ['hardness', 'lather'] as const

  test('has every corner, counter-clockwise, with wishes on its axes left out and put back', () => {
    const briefs = sampleBriefs(40, SEED + 1)
    const sizes = briefs.map((brief, seed) => {
      const space = new BlendSpace(brief, library)
      const corners = attainableRegion(space, axes)
      expect(surfaceOf(space, AXES)).toEqual(surfaceOf(new BlendSpace(brief, library), AXES))
      if (corners.length === 0) return 0
      const open = new BlendSpace(withoutWishesOn(brief, axes), library).program
      const worths = axes.map((axis) => space.perPercent(axis))
      const vector = {
        status: 'optimal',
        corners: corners.map(({ x, y }) => ({
          x: new Float64Array(),
          values: [x, y],
          weights: [1, 0],
        })),
        faces: [],
        dimension: 2,
        tolerance: 1e-9,
        complete: true,
      } as const
      const missed = missedBy(vector, open, worths, { directions: 60, whole: true, seed })
      expect(missed).toEqual([])
      for (let k = 0; corners.length > 2 && k < corners.length; k++) {
        const [a, b, c] = [0, 1, 2].map((step) => corners[(k + step) % corners.length])
        if (!a || !b || !c) throw new RangeError('No corner')
        expect((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)).toBeGreaterThan(0)
      }
      return corners.length
    })
    expect(Math.max(...sizes)).toBeGreaterThan(8)
  })
})

const AXES: readonly SurfaceAxis[] = [
  { measure: 'hardness', wanted: 'more' },
  { measure: 'lather', wanted: 'more' },
]

function finite(surface: ReturnType<typeof vectorSurface>) {
  if (surface.status === 'infeasible') throw new Error('Expected a surface')
  return surface
}
