import { describe, expect, test } from 'vitest'
import { library } from '../../../src/data/library'
import { measureOf, oilOf } from '../../../src/domain/blend/library'
import { type AcidMeasure, measureOfOil } from '../../../src/domain/blend/measure'
import { blendValue, blendValues } from '../../../src/domain/blend/values'
import { libraryOfValues } from './stub-library'

const stub = libraryOfValues({ olive: { hardness: 20 }, coconut: { hardness: 60 } })

describe('a measure of a blend', () => {
  test('is the weight average of its oils', () => {
    expect(blendValue(stub, {}, 'hardness', { olive: 75, coconut: 25 })).toBeCloseTo(30, 12)
  })

  test('takes shares as parts of their own sum', () => {
    expect(blendValue(stub, {}, 'hardness', { olive: 1.5, coconut: 0.5 })).toBeCloseTo(30, 12)
  })

  test('of price is the price per kg', () => {
    const prices = { olive: 7.2, coconut: 3.9 }
    // By hand: 0.7 × 7.2 + 0.3 × 3.9.
    expect(blendValue(library, prices, 'cost', { olive: 70, coconut: 30 })).toBeCloseTo(6.21, 12)
  })
})

describe('all measures of a blend', () => {
  test('have cost only where every oil that takes part has a price', () => {
    const blend = { olive: 70, coconut: 30, castor: 0 }
    expect(blendValues(library, { olive: 7 }, blend).cost).toBeUndefined()
    expect(blendValues(library, { olive: 7, coconut: 4 }, blend).cost).toBeCloseTo(6.1, 12)
  })

  test('are there for every measure of the library', () => {
    const told = blendValues(library, { olive: 7 }, { olive: 100 })
    expect(Object.keys(told)).toEqual(library.measures.map(({ id }) => id))
  })
})

describe('a measure of an oil', () => {
  const [measure] = stub.measures
  if (!measure || !('weights' in measure)) throw new Error('The stub has no acid measure')
  const olive = oilOf(stub, 'olive')

  test('takes a profile of 99.5 % as whole', () => {
    const acid = olive.acids.olive
    if (!acid) throw new Error('The stub oil has no acid')
    const short = { ...olive, acids: { olive: { ...acid, typical: 99.5 } } }
    expect(measureOfOil(measure, short)).toBeCloseTo(20, 12)
  })

  test('adds points for unsaponifiables up to its cap', () => {
    const basis = { basis: 'assumption', source: 'stated by the test' } as const
    const richer: AcidMeasure = {
      ...measure,
      offset: 1,
      unsaponifiable: { pointsPerGPer100G: 2, cap: 5, ...basis },
    }
    const holding = (gPerKg: number) => ({
      ...olive,
      unsaponifiableGPerKg: { ...olive.unsaponifiableGPerKg, typical: gPerKg },
    })
    // By hand: 10 g per kg is 1 g per 100 g, two points; 80 g per kg would be 16, capped at 5.
    expect(measureOfOil(richer, holding(10))).toBeCloseTo(1 + 20 + 2, 12)
    expect(measureOfOil(richer, holding(80))).toBeCloseTo(1 + 20 + 5, 12)
  })

  test('is not reckoned where an acid has no weight', () => {
    const unknown = { ...oilOf(library, 'olive'), id: 'other' }
    expect(() => measureOfOil(measure, unknown)).toThrow('has no weight for')
  })
})

test('an unknown oil or measure is a fault of the program and throws', () => {
  expect(() => oilOf(library, 'dragon')).toThrow('Unknown oil dragon')
  expect(() => measureOf(library, 'shine')).toThrow('Unknown measure shine')
})
