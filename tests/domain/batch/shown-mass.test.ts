import { unit } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { roundedToNearest } from '../../../src/domain/batch/rounding'
import { shownMass } from '../../../src/domain/batch/shown-mass'
import { GRAMS_PER, type MassUnit } from '../../../src/domain/units'
import { ready } from './plans'

const UNITS: readonly MassUnit[] = ['g', 'kg', 'oz', 'lb']

test.for([
  [588, 'g', 1, '588 g'],
  [143.01, 'g', 0.1, '143.0 g'],
  [143.01, 'g', null, '143.0 g'],
  [588, 'kg', 1, '0.588 kg'],
  [588, 'oz', 1, '20.74 oz'],
  [588, 'lb', 1, '1.296 lb'],
  [566.9904625, 'oz', 2.834952313, '20.0 oz'],
  [101.7748, 'oz', 0.28349523, '3.59 oz'],
] as const)('%f g in %s on a scale of %f g is shown as "%s"', ([grams, name, step, text]) => {
  expect(shownMass(grams, name, step)).toBe(text)
})

test('units weigh what mathjs says they do', () => {
  for (const name of UNITS) expect(unit(1, name).toNumber('g')).toBeCloseTo(GRAMS_PER[name], 9)
})

/** Read back from the paper and put to the nearest mark of the scale, it is the same weight. */
describe('changing the unit never changes a weight', () => {
  const steps = [0.01, 0.1, 0.5, 1, 2, 5, 28.349523125 / 10, 28.349523125 / 100]
  test.for(steps)('on a scale of %f g', (step) => {
    for (let k = 1; k < 4000; k += 37) {
      const grams = roundedToNearest(k * step * 1.7, step)
      for (const name of UNITS) {
        const read = unit(shownMass(grams, name, step)).toNumber('g')
        expect(roundedToNearest(read, step), `${grams} g in ${name}`).toBeCloseTo(grams, 6)
      }
    }
  })
})

test('every weight of a batch reads back the same in every unit', () => {
  const plan = ready({ scale: { oilStepG: 1, lyeStepG: 0.1 }, oilGrams: 1234 })
  for (const { grams, stepG, key } of plan.ingredients) {
    for (const name of UNITS) {
      const read = unit(shownMass(grams, name, stepG)).toNumber('g')
      expect(roundedToNearest(read, stepG ?? undefined), `${key} in ${name}`).toBe(grams)
    }
  }
})
