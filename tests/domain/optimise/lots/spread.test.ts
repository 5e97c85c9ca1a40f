import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { alkaliEquivalents, alkaliGrams } from '../../../../src/domain/chemistry/alkali'
import { blendValue } from '../../../../src/domain/blend/values'
import { drawFigures } from '../../../../src/domain/optimise/lots/draws'
import { lotRangeOf } from '../../../../src/domain/optimise/lots/lot-range'
import {
  lotSaponificationValue,
  saponificationOfOil,
  saponificationSpan,
} from '../../../../src/domain/optimise/lots/saponification'
import { lotValue } from '../../../../src/domain/optimise/lots/lot'
import { quantilesOf } from '../../../../src/domain/chance/quantiles'
import { spreadOf } from '../../../../src/domain/optimise/lots/spread'
import { seededRandom } from '../../../../src/domain/chance/random'
import { measureOfOil } from '../../../../src/domain/blend/measure'
import { libraryOfValues } from '../../blend/stub-library'
import { ACID_MEASURES, cornerLot, oil, oilOfLot, OILS } from './lots'

const { acids } = library
const DRAWS = { count: 4_000, seed: 11 }
const BAR = { olive: 45, coconut: 25, shea: 15, 'cocoa-butter': 10, castor: 5 }

describe('the value of a lot', () => {
  test('is what the measure says of an oil whose typical figures are the lot’s', () => {
    const random = seededRandom(5)
    for (const one of OILS) {
      const lot = cornerLot(one, random)
      for (const measure of ACID_MEASURES) {
        const expected = measureOfOil(measure, oilOfLot(one, lot))
        expect(lotValue(measure, one)(lot), `${measure.id} of ${one.id}`).toBeCloseTo(expected, 10)
      }
    }
  })
})

describe('the saponification value of a lot', () => {
  test('is the oil’s own typical value where the lot is typical', () => {
    // data/oils.json rounds to a tenth, and reckons its typical values by the same rule.
    for (const one of OILS) {
      const { typical, unsaponifiableGPerKg } = lotRangeOf(one)
      const lot = { acids: typical, unsaponifiableGPerKg: unsaponifiableGPerKg.typical }
      const value = lotSaponificationValue(one, lot, acids)
      expect(Math.abs(value - one.saponificationValue.typical), one.id).toBeLessThan(0.051)
    }
  })

  test('is never outside the span of the oil, nor that outside the range batches reckon with', () => {
    const random = seededRandom(6)
    for (const one of OILS) {
      const { low, high } = saponificationOfOil(one, acids)
      expect(low, one.id).toBeGreaterThanOrEqual(one.saponificationValue.low)
      expect(high, one.id).toBeLessThanOrEqual(one.saponificationValue.high)
      for (let k = 0; k < 200; k++) {
        const value = lotSaponificationValue(one, cornerLot(one, random), acids)
        expect(value, one.id).toBeGreaterThan(low - 1e-9)
        expect(value, one.id).toBeLessThan(high + 1e-9)
      }
    }
  })

  test('reaches both ends of the span, in corners the test makes, where nothing holds it back', () => {
    const random = seededRandom(8)
    for (const id of ['olive', 'palm', 'castor', 'tallow-beef']) {
      const free = { ...oil(id) }
      free.saponificationValue = { ...free.saponificationValue, low: 0, high: 1000 }
      const { low, high } = saponificationOfOil(free, acids)
      let [least, most] = [Infinity, -Infinity]
      for (let k = 0; k < 20_000; k++) {
        const value = lotSaponificationValue(free, cornerLot(free, random), acids)
        ;[least, most] = [Math.min(least, value), Math.max(most, value)]
      }
      // 20,000 random orders of a dozen acids come within a tenth of the best order's value.
      expect(least - low, id).toBeLessThan(0.1)
      expect(high - most, id).toBeLessThan(0.1)
    }
  })
})

describe('the spread of a bar', () => {
  const spread = spreadOf(BAR, library, acids, DRAWS)

  test('tells of every measure that varies and not of cost', () => {
    expect(Object.keys(spread.measures)).toEqual(ACID_MEASURES.map(({ id }) => id))
  })

  test('has quantiles that rise and stay within the exact ends, the typical value among them', () => {
    for (const { typical, span, quantiles } of [
      ...Object.values(spread.measures),
      spread.saponificationValue,
    ]) {
      const values = [span.low, ...quantiles.map(({ value }) => value), span.high]
      expect(values).toEqual(values.toSorted((a, b) => a - b))
      expect(typical).toBeGreaterThan(span.low)
      expect(typical).toBeLessThan(span.high)
    }
  })

  test('has its middle within a quarter of its half-width of the typical value', () => {
    for (const { typical, quantiles } of Object.values(spread.measures)) {
      const [low = NaN, , middle = NaN, , high = NaN] = quantiles.map(({ value }) => value)
      expect(Math.abs(middle - typical)).toBeLessThan((high - low) / 2 / 4 + 0.2)
    }
  })

  test('is the same for the same seed and another for another', () => {
    expect(spreadOf(BAR, library, acids, DRAWS)).toEqual(spread)
    const other = spreadOf(BAR, library, acids, { ...DRAWS, seed: 12 })
    expect(other.measures.hardness?.quantiles).not.toEqual(spread.measures.hardness?.quantiles)
    expect(other.measures.hardness?.span).toEqual(spread.measures.hardness?.span)
  })

  test('takes shares that add to 99.8 as parts of their own sum', () => {
    const short = Object.fromEntries(
      Object.entries(BAR).map(([id, share]) => [id, share * 0.998] as const),
    )
    const { hardness } = spreadOf(short, library, acids, DRAWS).measures
    expect(hardness?.typical).toBeCloseTo(spread.measures.hardness?.typical ?? NaN, 9)
    expect(hardness?.quantiles[2]?.value).toBeCloseTo(
      spread.measures.hardness?.quantiles[2]?.value ?? NaN,
      9,
    )
  })

  test('narrows when two oils share the bar that one had', () => {
    const width = (blend: Record<string, number>) => {
      const { quantiles } = spreadOf(blend, library, acids, DRAWS).measures.wear ?? {}
      return (quantiles?.[4]?.value ?? NaN) - (quantiles?.[0]?.value ?? NaN)
    }
    // Two independent oils of like spread: the spread of their halves is smaller by about √2.
    const alone = (width({ lard: 100 }) + width({ 'tallow-beef': 100 })) / 2
    expect(width({ lard: 50, 'tallow-beef': 50 })).toBeLessThan(0.85 * alone)
  })
})

test('a blend of oils that do not vary has every quantile at its typical value', () => {
  const stub = libraryOfValues({ hard: { hardness: 60 }, soft: { hardness: 20 } })
  const figures = stub.measures.flatMap((measure) =>
    'weights' in measure ? [(one: Parameters<typeof lotValue>[1]) => lotValue(measure, one)] : [],
  )
  const [drawn] = drawFigures({ hard: 25, soft: 75 }, stub, figures, { count: 50, seed: 1 })
  // By hand: 0.25 × 60 + 0.75 × 20 = 30.
  expect(new Set(drawn)).toEqual(new Set([30]))
})

test('the leanest and richest lots of a bar need the alkali of its saponification span', () => {
  const { low, high } = saponificationSpan(library, acids, { olive: 100 })
  // Codex CXS 33 gives olive oil 184 to 196 mg KOH per g (from memory, as data/oils.json says), which
  // is 131 to 140 g NaOH per kg.
  const naohGramsPerKg = (value: number) => alkaliGrams(alkaliEquivalents(1000, value), 'naoh')
  expect(naohGramsPerKg(low)).toBeGreaterThan(131)
  expect(naohGramsPerKg(high)).toBeLessThan(140)
  expect(low).toBeLessThan(high)
})

describe('quantiles', () => {
  test('of 1 to 5 are 1.2, 2, 3, 4 and 4.8: by hand, four steps for the whole', () => {
    const values = quantilesOf(Float64Array.from([5, 3, 1, 4, 2])).map(({ value }) => value)
    ;[1.2, 2, 3, 4, 4.8].forEach((expected, k) => expect(values[k]).toBeCloseTo(expected, 12))
  })

  test('of one value are that value', () => {
    expect(quantilesOf(Float64Array.of(7), [0, 0.5, 1])).toEqual([
      { part: 0, value: 7 },
      { part: 0.5, value: 7 },
      { part: 1, value: 7 },
    ])
  })

  test('of nothing are an error', () => {
    expect(() => spreadOf(BAR, library, acids, { count: 0, seed: 1 })).toThrow(/Nothing was drawn/u)
  })
})

test('the typical value of a spread is the value the library tells of the blend', () => {
  const { measures } = spreadOf(BAR, library, acids, { count: 10, seed: 1 })
  for (const { id } of ACID_MEASURES)
    expect(measures[id]?.typical).toBe(blendValue(library, {}, id, BAR))
})
