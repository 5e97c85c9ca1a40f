import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { totalChange } from '../../../../src/domain/blend/blend'
import { COST } from '../../../../src/domain/blend/measure'
import { measureOf } from '../../../../src/domain/blend/library'
import { blendValues } from '../../../../src/domain/blend/values'
import type { Brief, Limits } from '../../../../src/domain/optimise/brief/brief'
import { bestBlend } from '../../../../src/domain/optimise/search/best-blend'
import type { BetterStudy } from '../../../../src/domain/optimise/studies/question'
import { oneStepStudy } from '../../../../src/domain/optimise/studies/study'
import { breaches } from '../../../../src/domain/optimise/space/verify'
import { highs } from '../../lp/solvers/loaded-highs'
import { first, KITCHEN, ONE_TIE, PRICES, resultsOf, SHELF, WITH_PALM } from './bases'

const HARDER: BetterStudy = {
  kind: 'better',
  measure: 'hardness',
  base: KITCHEN,
  prices: PRICES,
  tolerances: without(ONE_TIE, 'hardness'),
  keepWishes: false,
}
const CHEAPER: BetterStudy = { ...HARDER, measure: COST, tolerances: ONE_TIE }
const BASE = blendValues(library, PRICES, KITCHEN)

/** Solvers keep rows to about 1e-8 of their size; a millionth of a point is far below any measure. */
const SOLVER_NOISE = 1e-6

/** Studies stand a hundred-thousandth of a tolerance inside it, which moves their optimum by about as much. */
const near = (expected: number) => (value: number) => Math.abs(value - expected) < 0.005

describe.each([
  ['harder with the same lather and the rest', HARDER],
  ['cheaper with the same feel', CHEAPER],
  ['milder', { ...HARDER, measure: 'mildness', tolerances: without(ONE_TIE, 'mildness') }],
  ['slower to wear', { ...HARDER, measure: 'wear', tolerances: without(ONE_TIE, 'wear') }],
])('%s', (_, question) => {
  const results = resultsOf(oneStepStudy(SHELF, question, library))
  const measure = measureOf(library, question.measure)
  const gain = (values: Readonly<Record<string, number>>) => {
    const by = (values[measure.id] ?? NaN) - (BASE[measure.id] ?? NaN)
    return measure.better === 'more' ? by : -by
  }

  test('holds every other measure within its tolerance', () => {
    for (const { measures } of results) {
      for (const [id, tolerance] of Object.entries(question.tolerances)) {
        const moved = Math.abs((measures[id] ?? NaN) - (BASE[id] ?? NaN))
        expect(moved).toBeLessThanOrEqual(tolerance + SOLVER_NOISE)
      }
    }
  })

  test('is never worse than the base in what was asked for, and comes best first', () => {
    const gains = results.map(({ measures }) => gain(measures))
    expect(Math.min(...gains)).toBeGreaterThan(0)
    expect(gains).toEqual(gains.toSorted((a, b) => b - a))
  })

  test('goes as far as HiGHS can on the same brief', () => {
    const best = bestBlend(briefOf(question), library, highs)
    const found = first(results)
    expect(found.role.kind).toBe('most')
    expect(found.measures[measure.id]).toSatisfy(near(best?.goalValue ?? NaN))
  })

  test('offers a way that goes half as far with fewer changes of oils', () => {
    const [most, ...ways] = results
    const least = ways.find(({ role }) => role.kind === 'least change')
    expect(least && most && gain(least.measures) / gain(most.measures)).toBeGreaterThan(0.499_999)
    expect(least?.changePoints).toBeLessThan(most?.changePoints ?? NaN)
  })

  test('keeps the limits of the shelf', () => {
    for (const { blend } of results) expect(breaches(SHELF, blend, library)).toEqual([])
  })
})

describe('a way with the least change', () => {
  test('changes as little as HiGHS can for the same gain', () => {
    const results = resultsOf(oneStepStudy(SHELF, HARDER, library))
    const most = first(results).measures.hardness ?? NaN
    const way = results.find(({ role }) => role.kind === 'least change')
    const start = BASE.hardness ?? NaN
    const target = start + Math.max(5, (most - start) / 2)
    const brief = briefOf(HARDER)
    const nearest = bestBlend(
      {
        ...brief,
        measures: { ...brief.measures, hardness: { min: target } },
        goal: { closestTo: KITCHEN },
      },
      library,
      highs,
    )
    expect(way?.changePoints).toSatisfy(near(nearest?.goalValue ?? NaN))
    expect(way && totalChange(KITCHEN, way.blend)).toBeCloseTo(way?.changePoints ?? NaN, 12)
  })
})

describe('what can not be had', () => {
  test('nothing cheaper than a bar with an oil that the shelf has not: the best is told', () => {
    const answer = oneStepStudy(SHELF, { ...CHEAPER, base: WITH_PALM }, library)
    if (answer.status !== 'none') throw new Error('a result was not expected')
    const { reason } = answer
    if (reason.kind !== 'no better') throw new Error(`not expected: ${reason.kind}`)
    // Palm at 2.15 is the cheapest oil of the demo, and the bar is a third palm.
    expect(reason.best.measures[COST]).toBeGreaterThan(answer.base[COST] ?? NaN)
  })

  test('no blend holds a bar harder than anything on the shelf: the nearest is told', () => {
    const base = { 'stearic-acid-triple-pressed': 100 }
    const answer = oneStepStudy(SHELF, { ...HARDER, base }, library)
    if (answer.status !== 'none' || answer.reason.kind !== 'nothing holds')
      throw new Error('a result was not expected')
    expect(answer.reason.nearest?.movedTies).toBeGreaterThan(1)
  })

  test('no cheaper than a blend whose cost is not known: the oils without a price are named', () => {
    const base = { coconut: 50, 'tallow-beef': 50 }
    const answer = oneStepStudy(SHELF, { ...CHEAPER, base }, library)
    expect(answer).toMatchObject({
      status: 'none',
      reason: { kind: 'no price', oils: ['tallow-beef'] },
    })
  })

  test('a brief with something wrong in it is not studied', () => {
    const answer = oneStepStudy({ ...SHELF, oils: {} }, HARDER, library)
    expect(answer.status).toBe('invalid')
  })
})

describe('the wishes of the brief', () => {
  const wished: Brief = {
    ...SHELF,
    measures: { conditioning: { min: (BASE.conditioning ?? NaN) - 1 } },
  }

  test('are listed where a result does not keep them', () => {
    const [most] = resultsOf(oneStepStudy(wished, HARDER, library))
    expect(most?.gives).toEqual(['measures.conditioning.min'])
  })

  test('hold when they are to be kept', () => {
    const results = resultsOf(oneStepStudy(wished, { ...HARDER, keepWishes: true }, library))
    expect(results.flatMap(({ gives }) => gives)).toEqual([])
  })
})

test('an oil without a price takes no part where cost is sought, and is named', () => {
  const oils = { ...SHELF.oils, babassu: { max: 30 } }
  const brief: Brief = { ...SHELF, oils, goal: { maximise: 'hardness' } }
  const question = { ...CHEAPER, prices: without(PRICES, 'babassu') }
  const answer = oneStepStudy(brief, question, library)
  expect(answer).toMatchObject({ status: 'found', leftOut: ['babassu'] })
  expect(resultsOf(answer).every(({ blend }) => !('babassu' in blend))).toBe(true)
})

/** The brief that a study amounts to, put together here from its own words. */
function briefOf({ measure, tolerances }: BetterStudy): Brief {
  const measures = Object.entries(tolerances).map(([id, tolerance]): [string, Limits] => {
    const value = BASE[id] ?? NaN
    return [id, { min: value - tolerance, max: value + tolerance }]
  })
  const better = measureOf(library, measure).better
  return {
    ...SHELF,
    measures: Object.fromEntries(measures),
    goal: better === 'more' ? { maximise: measure } : { minimise: measure },
  }
}

function without<T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([other]) => other !== key))
}
