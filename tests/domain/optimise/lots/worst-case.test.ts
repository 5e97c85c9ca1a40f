import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { type AcidMeasure, measureOfOil } from '../../../../src/domain/blend/measure'
import type { Oil } from '../../../../src/domain/blend/oil'
import { lotRangeOf } from '../../../../src/domain/optimise/lots/lot-range'
import { lotSpan } from '../../../../src/domain/optimise/lots/lot-span'
import { worstOfOil } from '../../../../src/domain/optimise/lots/worst-case'
import { libraryOfValues } from '../../blend/stub-library'
import { highs } from '../../lp/solvers/loaded-highs'
import { ACID_MEASURES, oil, OILS, unsaponifiableEnds } from './lots'

/** Points; HiGHS keeps rows to 1e-9 and a measure adds a dozen acids with weights up to 1. */
const TOLERANCE = 1e-7

const BASIS = { basis: 'assumption', source: 'stated by the test' } as const
const RANGE_BASIS = { ...BASIS, typicalBasis: 'assumption', typicalSource: BASIS.source } as const

describe('the worst case of a measure of an oil', () => {
  test.for(ACID_MEASURES.map((measure) => [measure.id, measure] as const))(
    'is what HiGHS finds over the stated ranges: %s, all oils',
    ([, measure]) => {
      for (const one of OILS) {
        const { low, high } = worstOfOil(measure, one)
        const label = `${measure.id} of ${one.id}`
        expect(Math.abs(low - byProgram(measure, one, 'min')), label).toBeLessThan(TOLERANCE)
        expect(Math.abs(high - byProgram(measure, one, 'max')), label).toBeLessThan(TOLERANCE)
      }
    },
  )

  test('has the typical value between its ends', () => {
    for (const measure of ACID_MEASURES) {
      for (const one of OILS) {
        const { low, typical, high } = worstOfOil(measure, one)
        expect(typical).toBe(measureOfOil(measure, one))
        expect(typical, `${measure.id} of ${one.id}`).toBeGreaterThanOrEqual(low - TOLERANCE)
        expect(typical, `${measure.id} of ${one.id}`).toBeLessThanOrEqual(high + TOLERANCE)
      }
    }
  })

  test('fills the acid that counts least first: by hand', () => {
    // Lows add to 60. Least: a to 50, then b to 30 of its 40, c stays at 20.
    // 50 × 0.1 + 30 × 0.4 + 20 × 0.9 = 35. Most: c to 45, then b to 35, a stays
    // at 20: 45 × 0.9 + 35 × 0.4 + 20 × 0.1 = 56.5.
    const stub = oilOfRanges({ a: [20, 45, 50], b: [20, 30, 40], c: [20, 25, 45] })
    const { low, high } = worstOfOil(measureOf({ a: 0.1, b: 0.4, c: 0.9 }), stub)
    expect(low).toBeCloseTo(35, 12)
    expect(high).toBeCloseTo(56.5, 12)
  })

  test('counts unsaponifiables from none to their limit, but a wax keeps its typical ones', () => {
    const measure: AcidMeasure = {
      ...measureOf({ a: 0 }),
      unsaponifiable: { pointsPerGPer100G: 2, cap: 12, ...BASIS },
    }
    const fat = oilOfRanges({ a: [100, 100, 100] }, { typical: 10, high: 40 })
    // 40 g per kg is 4 g in 100 g, at 2 points each.
    expect(worstOfOil(measure, fat)).toMatchObject({ low: 0, typical: 2, high: 8 })
    const wax = { ...fat, id: 'wax', kind: 'wax-ester' } as const
    expect(worstOfOil(measure, wax)).toMatchObject({ low: 2, typical: 2, high: 8 })
    const rich = oilOfRanges({ a: [100, 100, 100] }, { typical: 50, high: 900 })
    expect(worstOfOil(measure, rich)).toMatchObject({ low: 0, typical: 10, high: 12 })
  })

  test('is one value where nothing varies', () => {
    const stub = oilOfRanges({ a: [40, 40, 40], b: [60, 60, 60] })
    expect(worstOfOil(measureOf({ a: 0.5, b: 0.25 }), stub)).toEqual({
      low: 35,
      typical: 35,
      high: 35,
    })
  })

  test('needs a weight for every acid', () => {
    const stub = oilOfRanges({ a: [100, 100, 100] })
    expect(() => worstOfOil(measureOf({ b: 1 }), stub)).toThrow(/no weight for a of stub/u)
  })
})

describe('the lots of an oil', () => {
  test('keep the stated ranges of every oil in data/, typical profile and all', () => {
    for (const one of OILS) {
      const { low, typical, high } = lotRangeOf(one)
      Object.values(one.acids).forEach((range, index) => {
        // A typical share at the end of its range, as part of 100, may pass it by the last bit.
        expect(low[index], one.id).toBeCloseTo(range.low, 12)
        expect(high[index], one.id).toBeCloseTo(range.high, 12)
        expect(typical[index], one.id).toBeGreaterThan(range.low - 1e-12)
        expect(typical[index], one.id).toBeLessThan(range.high + 1e-12)
      })
    }
  })

  test('take in the typical profile where the stated ranges leave it out', () => {
    // The typical shares add to 80; as parts of 100 they are 50, 50 and a may be 45 at most.
    const stub = oilOfRanges({ a: [30, 40, 45], b: [40, 40, 60] })
    const { low, high } = lotRangeOf(stub)
    expect([...low]).toEqual([30, 40])
    expect([...high]).toEqual([50, 60])
    expect(worstOfOil(measureOf({ a: 1, b: 0 }), stub)).toEqual({ low: 40, typical: 50, high: 50 })
  })

  test('are the typical profile alone where no lot within the stated ranges adds to 100', () => {
    const stub = oilOfRanges({ a: [30, 40, 40], b: [30, 40, 40] })
    expect(worstOfOil(measureOf({ a: 1, b: 0.5 }), stub)).toEqual({
      low: 75,
      typical: 75,
      high: 75,
    })
  })

  test('need at least one acid', () => {
    expect(() => lotRangeOf(oilOfRanges({}))).toThrow(/no fatty acids/u)
  })
})

describe('the span of a blend', () => {
  test('is the weight average of the spans of its oils', () => {
    for (const measure of ACID_MEASURES) {
      const [olive, coconut] = [
        worstOfOil(measure, oil('olive')),
        worstOfOil(measure, oil('coconut')),
      ]
      const { low, high } = lotSpan(library, {}, measure.id, { olive: 75, coconut: 25 })
      expect(low).toBeCloseTo(0.75 * olive.low + 0.25 * coconut.low, 10)
      expect(high).toBeCloseTo(0.75 * olive.high + 0.25 * coconut.high, 10)
    }
  })

  test('has both ends of cost at the price', () => {
    const prices = { olive: 7, coconut: 4 }
    const span = lotSpan(library, prices, 'cost', { olive: 50, coconut: 50 })
    expect(span).toEqual({ low: 5.5, high: 5.5 })
  })
})

/** The worst case as a program over the stated ranges: acids in g per 100 g, and unsaponifiables. */
function byProgram(measure: AcidMeasure, one: Oil, sense: 'min' | 'max'): number {
  const acids = Object.entries(one.acids).map(([name, { low, high }]) => {
    return { lower: low, upper: high, points: measure.weights[name]?.weight ?? NaN, in100: 1 }
  })
  const [least, most] = unsaponifiableEnds(one)
  const { pointsPerGPer100G: perG, cap } = measure.unsaponifiable ?? {
    pointsPerGPer100G: 0,
    cap: 0,
  }
  // In points; the cap is a bound, g per kg are ten times g per 100 g.
  const unsaponifiables = {
    lower: Math.min((perG * least) / 10, cap),
    upper: Math.min((perG * most) / 10, cap),
    points: 1,
    in100: 0,
  }
  const parts = [...acids, unsaponifiables]
  const sign = sense === 'min' ? 1 : -1
  const outcome = highs({
    cost: parts.map(({ points }) => sign * points),
    lower: parts.map(({ lower }) => lower),
    upper: parts.map(({ upper }) => upper),
    rows: [{ coefficients: parts.map(({ in100 }) => in100), lower: 100, upper: 100 }],
  })
  if (outcome.status !== 'optimal') throw new Error(`The lots of ${one.id} are ${outcome.status}`)
  return measure.offset + sign * outcome.objective
}

type Ends = readonly [low: number, typical: number, high: number]

function oilOfRanges(
  ranges: Readonly<Record<string, Ends>>,
  unsaponifiable = { typical: 0, high: 0 },
): Oil {
  const acids = Object.entries(ranges).map(([id, [low, typical, high]]) => {
    return [id, { low, typical, high, ...RANGE_BASIS }] as const
  })
  return {
    ...oil('olive'),
    id: 'stub',
    acids: Object.fromEntries(acids),
    unsaponifiableGPerKg: { ...unsaponifiable, ...RANGE_BASIS },
  }
}

function measureOf(weights: Readonly<Record<string, number>>): AcidMeasure {
  const [measure] = libraryOfValues({ any: { measure: 0 } }).measures
  if (!measure || !('weights' in measure)) throw new Error('The stub has no measure')
  const entries = Object.entries(weights).map(([id, weight]) => [id, { weight, ...BASIS }] as const)
  return { ...measure, weights: Object.fromEntries(entries) }
}
