import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../../src/data/batch-facts'
import type { Acid } from '../../../../src/domain/batch/order/additions'
import { lastCheck, lastCheckProblems } from '../../../../src/domain/batch/superfat/last-check'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import type { PurityIs } from '../../../../src/domain/batch/order/purity'
import type { Weights } from '../../../../src/domain/batch/weigh/weights'
import { libraryOf, PLAIN, ready } from '../plans'

const from = libraryOf(
  { olive: [180, 190, 200], coconut: [248, 257, 265], jojoba: [90, 95, 100] },
  { jojoba: 'wax-ester' },
)

const NOTHING: Weights = {
  ...ready({ blend: { olive: 100 }, superfat: 8 }, from),
  oilGrams: {},
  extraFatGrams: {},
  alkaliGrams: {},
  acidGrams: [],
}

/** The last check of weights that nobody reckoned. */
function found(weights: Partial<Weights>, order: Partial<BatchOrder> = {}, facts = batchFacts) {
  const reckoning = { order: { ...PLAIN, ...order }, library: from, facts }
  return lastCheck({ ...reckoning, weights: { ...NOTHING, ...weights } })
}

describe('the last check counts fat', () => {
  const olive = { oilGrams: { olive: 1000 } }
  const lot = (saponificationValue: number | undefined, tolerance?: number) => ({
    lots: { olive: { saponificationValue, tolerance } },
  })
  const scale = { oilStepG: 2, lyeStepG: 1 }

  // By hand: grams x mg KOH/g / 56105.
  test.for<readonly [string, Partial<Weights>, Partial<BatchOrder>, number]>([
    ['at the low end of its range', olive, {}, (1000 * 180) / 56105],
    ['a step of the scale short', olive, { scale }, (998 * 180) / 56105],
    ['the stated error short', olive, { scale: { ...scale, oilErrorG: 5 } }, (995 * 180) / 56105],
    ['weighed less than the error as none', { oilGrams: { olive: 1 } }, { scale }, 0],
    ['of a certified lot 1 % low', olive, lot(190), (1000 * 188.1) / 56105],
    ['of a lot its tolerance low', olive, lot(190, 5), (1000 * 185) / 56105],
    ['of a lot half a percent low at least', olive, lot(190, 0), (1000 * 189.05) / 56105],
    ['of a lot without a value by its range', olive, lot(undefined, 5), (1000 * 180) / 56105],
    [
      'beside the blend too',
      { oilGrams: { olive: 1000 }, extraFatGrams: { coconut: 100 } },
      {},
      (1000 * 180 + 100 * 248) / 56105,
    ],
    ['and wax as nothing', { oilGrams: { olive: 1000, jojoba: 500 } }, {}, (1000 * 180) / 56105],
    ['and an oil it does not know as nothing', { oilGrams: { dragon: 1000 } }, {}, 0],
  ])('%s', ([, weights, order, mol]) => {
    expect(found(weights, order).fatMol).toBeCloseTo(mol, 9)
  })

  // By hand: coconut's 265 is the highest of this library.
  test.for<readonly [string, Partial<Weights>, Partial<BatchOrder>, number]>([
    ['as the fat that takes most', olive, {}, (1000 * 265) / 56105],
    ['as it is weighed, whatever the scale', olive, { scale }, (1000 * 265) / 56105],
    ['wax and all', { oilGrams: { olive: 500, jojoba: 500 } }, {}, (1000 * 265) / 56105],
    ['as a lot that takes more than any', olive, lot(300), (1000 * 300) / 56105],
    ['never as a lot that takes less', olive, lot(190), (1000 * 265) / 56105],
  ])('at the most %s', ([, weights, order, mol]) => {
    expect(found(weights, order).mostFatMol).toBeCloseTo(mol, 9)
  })

  test('at the most as a fat as grown: a fraction counts where it is weighed', () => {
    // By hand: the fraction takes up to 360 mg KOH/g, coconut up to 265.
    const plain = libraryOf({
      olive: [180, 190, 200],
      coconut: [248, 257, 265],
      mct: [310, 335, 360],
    })
    const oils = new Map(
      [...plain.oils].map(([id, oil]) => [
        id,
        { ...oil, tags: id === 'mct' ? ['fractionated'] : [] },
      ]),
    )
    const most = (oilGrams: Weights['oilGrams']) =>
      lastCheck({
        order: PLAIN,
        library: { ...plain, oils },
        facts: batchFacts,
        weights: { ...NOTHING, oilGrams },
      }).mostFatMol
    expect(most({ olive: 1000 })).toBeCloseTo((1000 * 265) / 56105, 9)
    expect(most({ olive: 900, mct: 100 })).toBeCloseTo((1000 * 360) / 56105, 9)
  })
})

describe('the last check counts hydroxide at its purest:', () => {
  test.for<
    readonly ['naoh' | 'koh', number | undefined, PurityIs | undefined, number | undefined, number]
  >([
    // Kind, stated, how it is meant, up to: percent, by the rules in README.
    ['naoh', undefined, undefined, undefined, 100],
    ['naoh', 97, undefined, undefined, 100],
    ['naoh', 97, 'exactly', undefined, 97],
    ['naoh', 97, 'exactly', 98, 98],
    ['naoh', 97, 'exactly', 96, 97],
    ['naoh', 99.2, { certificate: 'NA-2207', within: 0.3 }, undefined, 99.5],
    ['naoh', 99.2, { certificate: 'NA-2207' }, undefined, 99.7],
    ['naoh', 99.9, { certificate: 'NA-2207' }, undefined, 100],
    ['koh', undefined, undefined, undefined, 100],
    ['koh', 85, undefined, undefined, 92],
    ['koh', 91.9, 'atLeast', undefined, 92],
    ['koh', 92, 'atLeast', undefined, 95],
    ['koh', 97, 'atLeast', undefined, 97],
    ['koh', 90, 'exactly', undefined, 90],
  ])('%s of %s, meant as %o, with up to %s, is %d', ([kind, stated, is, upTo, most]) => {
    const order = {
      purity: { [kind]: stated },
      purityIs: { [kind]: is },
      purityUpTo: { [kind]: upTo },
    }
    const molarMass = kind === 'naoh' ? 39.997 : 56.105
    const { alkaliMol } = found({ alkaliGrams: { [kind]: 200 } }, order)
    expect(alkaliMol).toBeCloseTo((200 * most) / 100 / molarMass, 9)
  })

  test('a solution up to 2 % of it more, or its certificate’s tolerance', () => {
    const weights = { alkaliGrams: { naoh: 200 } }
    const order = { lyeSolution: { naoh: 50 } }
    // By hand: 200 g of 51 and of 50.2 %.
    expect(found(weights, order).alkaliMol).toBeCloseTo(102 / 39.997, 9)
    const certified = { ...order, purityIs: { naoh: { certificate: 'S-118', within: 0.2 } } }
    expect(found(weights, certified).alkaliMol).toBeCloseTo(100.4 / 39.997, 9)
  })

  test('both kinds, each with the scale off once, and none that is not there', () => {
    const scale = { oilStepG: 1, lyeStepG: 2 }
    const both = { alkaliGrams: { naoh: 100, koh: 50 } }
    expect(found(both, { scale }).alkaliMol).toBeCloseTo(102 / 39.997 + 52 / 56.105, 9)
    const finer = { ...scale, lyeErrorG: 0.5 }
    expect(found(both, { scale: finer }).alkaliMol).toBeCloseTo(100.5 / 39.997 + 50.5 / 56.105, 9)
    expect(found({ alkaliGrams: { naoh: 0 } }, { scale }).alkaliMol).toBe(0)
  })
})

describe('the last check counts acid at its weakest:', () => {
  const vinegar = { acid: 'acetic', grams: 250, strengthPercent: 5, alkali: 'add' as const }
  const citric = { acid: 'citric', grams: 100, alkali: 'add' as const }
  const paper = { certificate: 'V-120' }

  // data/acids.json: at the least 0.98 of citric acid and 0.95 of what vinegar's label says.
  // Citric acid 192.123 g/mol with three groups, its hydrate 18.015 more; acetic acid 60.052.
  test.for<readonly [string, Acid, number]>([
    ['citric acid that may be the hydrate', citric, (3 * 98) / 210.138],
    ['citric acid that is sure', { ...citric, formSure: true }, (3 * 98) / 192.123],
    ['vinegar of 5 %', vinegar, (250 * 0.0475) / 60.052],
    ['of 4 % at the least', { ...vinegar, strengthFromPercent: 4 }, (250 * 0.04) / 60.052],
    ['of 4.9 % without a paper', { ...vinegar, strengthFromPercent: 4.9 }, (250 * 0.0475) / 60.052],
    [
      'of 4.9 % on paper',
      { ...vinegar, ...paper, strengthFromPercent: 4.9 },
      (250 * 0.049) / 60.052,
    ],
    [
      'of 6 % at the least, which is more than stated',
      { ...vinegar, ...paper, strengthFromPercent: 6 },
      (250 * 0.05) / 60.052,
    ],
    ['on a paper that states no least', { ...vinegar, ...paper }, (250 * 0.0475) / 60.052],
  ])('%s', ([, acid, mol]) => {
    const { acidMol } = found({ acidGrams: [acid.grams ?? NaN] }, { acids: [acid] })
    expect(acidMol).toBeCloseTo(mol, 5)
  })

  test('weighed short, never below nothing', () => {
    const order = { acids: [vinegar], scale: { oilStepG: 1, lyeStepG: 2 } }
    expect(found({ acidGrams: [250] }, order).acidMol).toBeCloseTo((248 * 0.0475) / 60.052, 6)
    expect(found({ acidGrams: [1] }, order).acidMol).toBe(0)
  })

  test('several together, and one that nobody knows or weighed as nothing', () => {
    const acids = [vinegar, { ...citric, formSure: true }]
    const both = (250 * 0.0475) / 60.052 + (3 * 98) / 192.123
    expect(found({ acidGrams: [250, 100] }, { acids }).acidMol).toBeCloseTo(both, 5)
    expect(found({ acidGrams: [250] }, { acids }).acidMol).toBeCloseTo((250 * 0.0475) / 60.052, 6)
    const dragon = [{ ...citric, acid: 'dragon' }]
    expect(found({ acidGrams: [100] }, { acids: dragon }).acidMol).toBe(0)
  })
})

describe('the last check refuses', () => {
  function refused(
    naoh: number,
    leanestPercent: number,
    more: Partial<BatchOrder> = {},
    acidG = 0,
  ) {
    const weights = {
      ...NOTHING,
      oilGrams: { olive: 1000 },
      alkaliGrams: { naoh },
      acidGrams: [acidG],
    }
    const order = { ...PLAIN, ...more }
    const reckoning = { order, weights, library: from, facts: batchFacts }
    return lastCheckProblems(reckoning, leanestPercent).map(({ path }) => path)
  }
  const leanest = (naoh: number, acidMol = 0) =>
    100 * (1 - (naoh / 39.997 - acidMol) / ((1000 * 180) / 56105))

  test('more hydroxide than any fat of this weight could take, whatever the plan says', () => {
    // By hand: 1000 x 265 / 56105 = 4.723287 mol, 188.917 g.
    expect(refused(188.9, leanest(188.9))).toEqual([])
    expect(refused(188.93, leanest(188.93))).toEqual(['alkali'])
    // A weight that is no number is never within what fat could take.
    expect(refused(NaN, NaN)).toEqual(['alkali'])
  })

  test('what acids take counts as room', () => {
    // By hand: 60.052 g of glacial acetic acid, at the least 0.95 mol, are room for 37.997 g more.
    const acids = [{ acid: 'acetic', grams: 60.052, strengthPercent: 100, alkali: 'add' as const }]
    expect(refused(226.9, leanest(226.9, 0.95), { acids }, 60.052)).toEqual([])
    expect(refused(226.93, leanest(226.93, 0.95), { acids }, 60.052)).toEqual(['alkali'])
    expect(refused(128, leanest(128), { acids }, NaN)).toEqual(['alkali'])
  })

  test('a leanest superfat other than the plan’s, either way, beyond floating point', () => {
    // By hand: 128 g are 3.200240 mol on 3.208270: 0.2503 %, and may be 1e-6 points off.
    const lean = leanest(128)
    expect(refused(128, lean)).toEqual([])
    for (const off of [9e-7, -9e-7]) expect(refused(128, lean + off)).toEqual([])
    for (const off of [1.1e-6, -1.1e-6, 1, -1])
      expect(refused(128, lean + off)).toEqual(['superfat'])
    // Far off the wall floating point is coarser: of -46.9 %, 4.69e-5 points.
    expect(refused(188.5, leanest(188.5) + 4e-5)).toEqual([])
    expect(refused(188.5, leanest(188.5) + 5e-5)).toEqual(['superfat'])
    expect(refused(128, NaN)).toEqual(['superfat'])
  })
})
