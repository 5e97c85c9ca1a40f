import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { Library } from '../../../../src/domain/blend/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { undominated, type Wanted } from '../../../../src/domain/optimise/pareto/undominated'
import { measureRange } from '../../../../src/domain/optimise/ranges/attainable-linear'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Axes, Corner } from '../../../../src/domain/optimise/map/region'
import { attainableRegion } from '../../../../src/domain/optimise/map/attainable-region'
import { studyBrief } from '../../../../src/domain/optimise/solve/study'
import { libraryOfValues } from '../../blend/stub-library'
import { highs } from '../../lp/solvers/loaded-highs'

type Place = readonly [across: number, up: number]

/** Corners known by drawing the oils on paper: each oil at its hardness (across) and lather (up). */
const DRAWN: readonly (readonly [what: string, oils: Record<string, Place>, corners: Place[]])[] = [
  ['one oil is a point', { a: [10, 20] }, [[10, 20]]],
  [
    'two oils are a line',
    { a: [10, 20], b: [30, 5] },
    [
      [10, 20],
      [30, 5],
    ],
  ],
  [
    'identical oils are a point',
    { a: [10.1, 20.3], b: [10.1, 20.3], c: [10.1, 20.3] },
    [[10.1, 20.3]],
  ],
  [
    'three oils are a triangle',
    { a: [0, 0], b: [10, 0], c: [0, 10] },
    [
      [0, 0],
      [10, 0],
      [0, 10],
    ],
  ],
  [
    'an oil inside adds no corner',
    { a: [0, 0], b: [10, 0], c: [0, 10], d: [3, 3] },
    [
      [0, 0],
      [10, 0],
      [0, 10],
    ],
  ],
  [
    'oils on an edge add no corner',
    { a: [0, 0], m: [5, 0], b: [10, 0], c: [10, 10], n: [10, 4], d: [0, 10] },
    [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ],
  ],
  [
    'a rising line keeps its ends',
    { m: [20, 20], a: [10, 10], b: [30, 30] },
    [
      [10, 10],
      [30, 30],
    ],
  ],
  [
    'a falling line keeps its ends',
    { m: [20, 20], a: [10, 30], b: [30, 10] },
    [
      [10, 30],
      [30, 10],
    ],
  ],
  [
    'a mirror of two measures is a line',
    { m: [20.9, 79.1], a: [10.7, 89.3], b: [30.3, 69.7] },
    [
      [10.7, 89.3],
      [30.3, 69.7],
    ],
  ],
  [
    'a measure that all oils share leaves a line, upright',
    { m: [10.1, 10], a: [10.1, 20], b: [10.1, 5] },
    [
      [10.1, 20],
      [10.1, 5],
    ],
  ],
  [
    'a measure that all oils share leaves a line, level',
    { m: [10, 10.1], a: [20, 10.1], b: [5, 10.1] },
    [
      [20, 10.1],
      [5, 10.1],
    ],
  ],
  [
    'a measure that no oil has leaves a line',
    { a: [0, 10], b: [0, 30], m: [0, 20] },
    [
      [0, 10],
      [0, 30],
    ],
  ],
  [
    'a sliver keeps a corner that stands out by a thousandth',
    { a: [10, 10], b: [30, 30], m: [20, 20.001] },
    [
      [10, 10],
      [30, 30],
      [20, 20.001],
    ],
  ],
]

describe('the region', () => {
  for (const [what, oils, corners] of DRAWN) {
    test(what, () => {
      expect(placesOf(regionOf(oils))).toEqual(sorted(corners))
    })
  }

  test('of fixed shares is a point', () => {
    const oils = { a: [10.1, 20.3], b: [33.3, 5.1], c: [12.7, 9.9] } as const
    const fixed = { a: at(33.3), b: at(33.3), c: at(33.4) }
    // By hand: 0.333 × 10.1 + 0.333 × 33.3 + 0.334 × 12.7, and the same of lather.
    expect(placesOf(regionOf(oils, { oils: fixed }))).toEqual([[18.694, 11.7648]])
  })

  test('of shares fixed to a hair is no wider than that hair', () => {
    const oils = { a: [10.1, 20.3], b: [33.3, 5.1] } as const
    const fixed = { a: { min: 50, max: 50 + 1e-8 }, b: {} }
    const region = regionOf(oils, { oils: fixed })
    // By hand: 1e-8 % of a for b moves hardness by 1e-8 × 23.2 / 100.
    for (const { x } of region) expect(Math.abs(x - 21.7)).toBeLessThanOrEqual(2.4e-9)
    expect(region.length).toBeGreaterThan(0)
  })

  test('is empty where the rest of the brief has no blend', () => {
    const oils = { a: [0, 0], b: [10, 10] } as const
    const limited = { oils: { a: { max: 30 }, b: { max: 60 } } }
    expect(regionOf(oils, limited)).toEqual([])
  })

  test('keeps the limits on shares', () => {
    const oils = { a: [0, 0], b: [10, 0], c: [0, 10] } as const
    const limited = { oils: { a: {}, b: { max: 40 }, c: { max: 80 } } }
    // By hand: at most 4 across and 8 up, and across plus up at most 10.
    expect(placesOf(regionOf(oils, limited))).toEqual(
      sorted([
        [0, 0],
        [4, 0],
        [4, 6],
        [2, 8],
        [0, 8],
      ]),
    )
  })

  test('sets aside the wishes on its own axes and keeps the others', () => {
    const library = libraryOfValues({
      a: { hardness: 0, lather: 0, wear: 0 },
      b: { hardness: 10, lather: 10, wear: 100 },
    })
    const measures = { hardness: { min: 9 }, lather: { max: 1 }, wear: { max: 50 } }
    const brief = briefOf(library, { measures })
    expect(
      placesOf(attainableRegion(new BlendSpace(brief, library), ['hardness', 'lather'])),
    ).toEqual(
      sorted([
        [0, 0],
        [5, 5],
      ]),
    )
  })

  test('of one measure against itself is refused', () => {
    const library = libraryOfValues({ a: { hardness: 5 }, b: { hardness: 9 } })
    const space = new BlendSpace(briefOf(library), library)
    expect(() => attainableRegion(space, ['hardness', 'hardness'])).toThrow('on two axes')
  })
})

describe('the region with cost as an axis', () => {
  const oils = { olive: { pricePerKg: 7 }, coconut: { pricePerKg: 7 }, castor: { pricePerKg: 7 } }
  const brief: Brief = { oils, groups: [], measures: {}, goal: { maximise: 'lather' } }

  test('is a level line where all oils cost the same', () => {
    const region = attainableRegion(new BlendSpace(brief, library), ['lather', 'cost'])
    expect(region.length).toBe(2)
    expect(region.map(({ y }) => y)).toEqual([expect.closeTo(7, 9), expect.closeTo(7, 9)])
  })

  test('has no reach where a price is missing, and the answer still stands', () => {
    const unpriced = { ...brief, oils: { ...oils, olive: {} } }
    const study = studyBrief(unpriced, library, highs)
    expect(study.answer.status).toBe('optimal')
    expect(study.reach.cost).toBeUndefined()
    expect(study.reach.lather).toBeDefined()
  })
})

describe('a corner', () => {
  test('is reached by its blend', () => {
    const oils = { a: [0, 0], b: [10, 0], c: [0, 10], d: [9, 9] } as const
    for (const { x, y, blend } of regionOf(oils)) {
      const reached = (axis: 0 | 1) =>
        Object.entries(oils).reduce((sum, [oil, place]) => {
          return sum + ((blend[oil] ?? 0) * place[axis]) / 100
        }, 0)
      expect([reached(0), reached(1)]).toEqual([expect.closeTo(x, 9), expect.closeTo(y, 9)])
    }
  })
})

describe('the frontier', () => {
  const square = { a: [0, 0], b: [10, 0], c: [10, 10], d: [0, 10] } as const
  const kite = { a: [0, 0], b: [10, 4], c: [9, 9], d: [4, 10] } as const

  test.for([
    ['more', 'more', [[10, 10]]],
    ['less', 'less', [[0, 0]]],
    ['more', 'less', [[10, 0]]],
    ['less', 'more', [[0, 10]]],
  ] as const)(
    'of a square, %s across and %s up, is its one best corner',
    ([across, up, corners]) => {
      expect(frontier(square, [across, up])).toEqual(corners)
    },
  )

  test('of a kite runs along the edge that nothing beats', () => {
    expect(frontier(kite, ['more', 'more'])).toEqual([
      [4, 10],
      [9, 9],
      [10, 4],
    ])
    expect(frontier(kite, ['less', 'less'])).toEqual([[0, 0]])
    expect(frontier(kite, ['more', 'less'])).toEqual([
      [0, 0],
      [10, 4],
    ])
  })

  test('does not follow an upright edge that only noise leans over', () => {
    const leaning = [
      { x: 10 + 1e-12, y: 0, blend: {} },
      { x: 10, y: 10, blend: {} },
      { x: 0, y: 5, blend: {} },
    ]
    expect(undominated(leaning, ['more', 'more'])).toEqual([leaning[1]])
  })

  test('of nothing is nothing', () => {
    expect(undominated([], ['more', 'more'])).toEqual([])
  })

  function frontier(oils: Record<string, Place>, wanted: Wanted): Place[] {
    return undominated(regionOf(oils), wanted).map(({ x, y }) => rounded([x, y]))
  }
})

describe('what a measure can reach', () => {
  const values = libraryOfValues({ a: { hardness: 20 }, b: { hardness: 60 }, c: { hardness: 30 } })

  test('is the least and the most of its oils', () => {
    expect(measureRange(new BlendSpace(briefOf(values), values), 'hardness')).toEqual({
      min: 20,
      max: 60,
    })
  })

  test('shrinks with limits on shares', () => {
    const oils = { a: {}, b: { min: 10, max: 40 }, c: { min: 20 } }
    const range = measureRange(new BlendSpace(briefOf(values, { oils }), values), 'hardness')
    // By hand: 70 a, 10 b, 20 c is 26; 40 b, 60 c is 42.
    expect(range?.min).toBeCloseTo(26, 9)
    expect(range?.max).toBeCloseTo(42, 9)
  })

  test('is nothing where there is no blend', () => {
    const oils = { a: { max: 10 } }
    expect(
      measureRange(new BlendSpace(briefOf(values, { oils }), values), 'hardness'),
    ).toBeUndefined()
  })
})

function regionOf(oils: Readonly<Record<string, Place>>, rest: Partial<Brief> = {}): Corner[] {
  const values = Object.entries(oils).map(([oil, [hardness, lather]]) => {
    return [oil, { hardness, lather }] as const
  })
  const stub = libraryOfValues(Object.fromEntries(values))
  const axes: Axes = ['hardness', 'lather']
  return attainableRegion(new BlendSpace(briefOf(stub, rest), stub), axes)
}

function briefOf(stub: Library, rest: Partial<Brief> = {}): Brief {
  const oils = Object.fromEntries([...stub.oils.keys()].map((oil) => [oil, {}]))
  return { oils, groups: [], measures: {}, goal: { maximise: 'hardness' }, ...rest }
}

function at(share: number) {
  return { min: share, max: share }
}

/** Places without the noise of a solver, in an order of their own. */
function placesOf(region: readonly Corner[]): Place[] {
  return sorted(region.map(({ x, y }) => rounded([x, y])))
}

function rounded([x, y]: Place): Place {
  const plain = (value: number) => Number(value.toFixed(6)) + 0
  return [plain(x), plain(y)]
}

function sorted(places: readonly Place[]): Place[] {
  return places.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
}
