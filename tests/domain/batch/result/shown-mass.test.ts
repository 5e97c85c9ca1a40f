import { unit } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { roundedToNearest } from '../../../../src/domain/batch/weigh/rounding'
import { sheetHtml } from '../../../../src/cli/sheet-html'
import { batchFacts } from '../../../../src/data/batch-facts'
import { library } from '../../../../src/data/library'
import { actualReport } from '../../../../src/domain/batch/actual/actuals'
import { sheetOf } from '../../../../src/domain/batch/sheet/sheet'
import { sheetText } from '../../../../src/domain/batch/sheet/sheet-text'
import { shownLine, shownMass } from '../../../../src/domain/batch/result/shown-mass'
import { GRAMS_PER, type MassUnit } from '../../../../src/domain/units'
import { ready } from '../plans'

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

describe('a weight without a scale', () => {
  // 17.353 g to a tenth: down 17.3, up 17.4; in oz 0.6121 (0.1 g is 0.0035 oz): three places.
  test.for([
    ['alkali', 'g', '17.3 g'],
    ['alkali', 'kg', '0.0173 kg'],
    ['alkali', 'oz', '0.612 oz'],
    ['alkali', 'lb', '0.0382 lb'],
    ['water', 'g', '17.4 g'],
    ['water', 'oz', '0.613 oz'],
    ['water', 'lb', '0.0383 lb'],
    ['cookWater', 'g', '17.4 g'],
    ['liquid', 'g', '17.4 g'],
    ['oil', 'g', '17.4 g'],
    ['acid', 'g', '17.4 g'],
    ['additive', 'g', '17.4 g'],
  ] as const)(
    'of %s in %s is cut the way that is never more alkaline: %s',
    ([kind, unit, text]) => {
      expect(shownLine({ kind, grams: 17.353, stepG: null }, unit)).toBe(text)
    },
  )

  test('that is a round figure stays what it is', () => {
    for (const kind of ['alkali', 'water', 'oil'] as const)
      for (const grams of [0.1, 0.3, 17.3, 143.1, 1000.7])
        expect(shownLine({ kind, grams, stepG: null }, 'g')).toBe(`${grams.toFixed(1)} g`)
  })
})

describe('a weighing list', () => {
  const SCALES = [undefined, { oilStepG: 1, lyeStepG: 0.1 }, { oilStepG: 5, lyeStepG: 1 }]
  test.for([
    [{ oilGrams: 30 }],
    [{ oilGrams: 1234.5 }],
    [{ oilGrams: 333, alkali: { naoh: 60, koh: 40 }, purity: { koh: 90 } }],
    [{ acids: [{ acid: 'citric', percentOfOils: 1.3, alkali: 'add' as const }] }],
    [{ bars: { count: 7, grams: 93, weight: 'cured' as const }, oilGrams: undefined }],
  ])('weighed as it is shown is never more alkaline than reckoned: %o', ([order]) => {
    for (const scale of SCALES) {
      const plan = ready({ superfat: 8, ...order, scale })
      for (const name of UNITS) {
        const actuals = Object.fromEntries(
          plan.ingredients.map((line) => [line.key, unit(shownLine(line, name)).toNumber('g')]),
        )
        const really = actualReport(plan, actuals, library, batchFacts)
        const percent = really.status === 'reckoned' ? really.report.superfatPercent : NaN
        expect(percent, name).toBeGreaterThanOrEqual(plan.superfat.typicalPercent - 1e-4)
      }
    }
  })

  test('with a scale reads back the same in every unit, whichever way it is cut', () => {
    for (const step of [0.01, 0.1, 0.25, 1, 2, 5, 28.349523125 / 10, 28.349523125 / 100])
      for (const kind of ['alkali', 'water', 'additive'] as const)
        for (let k = 1; k < 1000; k += 83) {
          const grams = roundedToNearest(k * step * 1.7, step)
          for (const name of UNITS) {
            const read = unit(shownLine({ kind, grams, stepG: step }, name)).toNumber('g')
            expect(roundedToNearest(read, step), `${grams} g in ${name}`).toBeCloseTo(grams, 6)
          }
        }
  })
})

describe('hydroxide of a batch without a scale is rounded down, and water up,', () => {
  const plan = ready({ oilGrams: 118, superfat: 6, water: { lyeConcentration: 33 } })
  const shown = sheetOf(plan, ['Lye burns.'])
  const sheet = shown.status === 'ready' ? shown.sheet : undefined
  const lye = plan.alkaliGrams.naoh ?? NaN
  const cut = (grams: number, name: MassUnit, places: number, way: (n: number) => number) =>
    `${(way((grams / GRAMS_PER[name]) * 10 ** places) / 10 ** places).toFixed(places)} ${name}`

  test.for([
    ['g', 1],
    ['oz', 3],
    ['lb', 4],
  ] as const)('in %s on the sheet as text and as a page', ([name, places]) => {
    if (!sheet) throw new Error('There is no sheet')
    for (const text of [sheetText(sheet, name), sheetHtml(sheet, name)]) {
      expect(text).toContain(cut(lye, name, places, Math.floor))
      expect(text).toContain(cut(plan.water.plainG, name, places, Math.ceil))
    }
  })
})
