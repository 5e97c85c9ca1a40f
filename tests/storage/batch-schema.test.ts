import { expect, test } from 'vitest'
import { keptBatch } from '../../src/storage/batch-schema'
import type { BatchChoices } from '../../src/state/batch-choices'

/** As the first version of the page kept it: nothing but a plain batch. */
const OLD = {
  oilGrams: 5000,
  alkali: 'naoh',
  purityPercent: 98.5,
  superfatPercent: 6.5,
  water: { lyeConcentration: 33 },
  scale: { oilStepG: 1, lyeStepG: 1 },
}

/** One of everything that can be chosen. */
const FULL: BatchChoices = {
  oilGrams: 961,
  mould: {
    loafMm: { length: 250, bottomWidth: 80, topWidth: 90, height: 65 },
    fillPercent: 95,
    densityGPerMl: 1.02,
    count: 2,
  },
  cut: { thicknessMm: 25 },
  alkali: 'naoh',
  purity: { naoh: 99, koh: 90 },
  purityIs: { naoh: { certificate: 'NA-2207', within: 0.3 }, koh: 'exactly' },
  secondAlkali: { percent: 10, by: 'mol' },
  purityUpTo: { naoh: 100 },
  lyeSolution: { koh: 45 },
  superfatPercent: 5,
  extraFat: { percent: 3, of: 'equivalents', oils: { shea: 1 }, when: 'afterCook' },
  lots: {
    olive: { saponificationValue: 189.4, tolerance: 1, name: 'OL-0830', certificate: 'CoA 88' },
  },
  confirmedLean: 'Titrated',
  confirmedLeanAt: -0.6,
  leanSeen: true,
  water: { onlyFromLiquids: true },
  waterOn: 'pure',
  liquids: [{ liquid: 'goat-milk', grams: 200, waterPercent: 88, fatPercent: 3, when: 'lye' }],
  lye: { startC: 5, iceGrams: 100 },
  acids: [
    {
      acid: 'acetic',
      grams: 20,
      strengthPercent: 5,
      strengthFromPercent: 4,
      alkali: 'leave',
      certificate: 'V-12',
      formSure: true,
    },
  ],
  additives: [{ additive: 'kaolin', percentOfOils: 2 }],
  fragrance: {
    percentOfOils: 2,
    blend: { lavender: 1 },
    certificates: {
      lavender: {
        allergens: [{ allergen: 'linalool', lowPercent: 20, highPercent: 40 }],
        ifraMostPercent: 3,
        ifraStatement: '51st',
        flashC: 70,
      },
    },
  },
  process: 'hot',
  cook: { extraWaterPercentOfOils: 4 },
  cure: { days: 30, finalMoisturePercent: 11 },
  scale: { oilStepG: 1, lyeStepG: 0.1, oilErrorG: 2, lyeErrorG: 0.2 },
  pricesPerKg: { naoh: 2.5 },
  papers: {
    product: 'Bar',
    madeOn: '2026-11-25',
    productCode: 'KB',
    number: 2,
    responsiblePerson: 'A. Maker',
  },
  unit: 'lb',
  paper: 'Letter',
  run: { ticks: { 'oil:olive': 500 }, actual: { 'oil:olive': 501 }, cautionRead: true },
}

test('a batch kept before there was more than a plain one still opens, with a purity for each alkali', () => {
  const { purityPercent, ...rest } = OLD
  expect(keptBatch.parse(OLD)).toEqual({ ...rest, purity: { naoh: purityPercent, koh: 90 } })
})

test('all that can be chosen comes back as it was, also through text', () => {
  expect(keptBatch.parse(FULL)).toEqual(FULL)
  expect(keptBatch.parse(JSON.parse(JSON.stringify(FULL)))).toEqual(FULL)
})

test('choices that were taken back are as if never made', () => {
  const { mould, ...without } = FULL
  expect(mould).toBeDefined()
  expect(keptBatch.parse({ ...FULL, mould: undefined })).toEqual(without)
})

test.for([
  ['a field that nobody knows', { glitter: 5 }],
  ['a mould of two shapes', { mould: { volumeMl: 5, waterGrams: 5 } }],
  ['a unit that is none', { unit: 'stone' }],
  ['a tick without its weight', { run: { ticks: { a: true }, actual: {}, cautionRead: false } }],
  ['a weight that is no number', { oilGrams: NaN }],
] as const)('%s is refused', ([, change]) => {
  expect(keptBatch.safeParse({ ...FULL, ...change }).success).toBe(false)
})

test('a batch kept with one purity for each of two alkalis opens with both', () => {
  const secondAlkali = { percent: 40, by: 'mol', purityPercent: 97 }
  expect(keptBatch.parse({ ...OLD, alkali: 'koh', purityPercent: 88, secondAlkali })).toMatchObject(
    {
      purity: { naoh: 97, koh: 88 },
      secondAlkali: { percent: 40, by: 'mol' },
    },
  )
})
