import { describe, expect, test } from 'vitest'
import { soapComposition } from '../../../src/domain/batch/react/soap-composition'
import { gramsAtMoisture } from '../../../src/domain/batch/react/cure'
import type { ReadyPlan } from '../../../src/domain/batch/result/plan'
import { cureOf, libraryOf, near, ready } from './plans'

/*
 * Eight batches worked by hand with M(NaOH) 39.997, M(KOH) 56.106, M(water) 18.015, M(glycerol) 92.094 g/mol.
 * The program's atomic weights give M(KOH) 56.105: 3 mg in 143 g of lye, up to 8 mg in its water, which the
 * tolerance covers. Percent are given to a tenth.
 */
const TOLERANCE_G = 0.02
const TOLERANCE_PERCENT = 0.05

const grams = (value: number) => near(value, TOLERANCE_G)
const percent = (value: number) => near(value, TOLERANCE_PERCENT)

const E1 = { olive: 190, coconut: 257, palm: 199, castor: 181 }
const E1_ORDER = {
  blend: { olive: 45, coconut: 25, palm: 25, castor: 5 },
  purity: { naoh: 99 },
  water: { lyeConcentration: 30 },
}

/** A bar at a moisture, and what it lost since it was poured. */
function bar(plan: ReadyPlan, moisturePercent: number) {
  const g = gramsAtMoisture(plan.outcome, moisturePercent)
  return {
    g,
    lossPercent: 100 * (1 - g / plan.totalGrams),
    tfmPercent: (100 * plan.outcome.totalFattyMatterG) / g,
  }
}

test('1: NaOH of 99 %, 5 % discount, 30 % lye', () => {
  const plan = ready(E1_ORDER, libraryOf(E1))
  // 148.672 neat; x 0.95 = 141.238; / 0.99 = 142.665; x (1/0.30 - 1) = 332.88.
  expect(plan.figures.pureHydroxideGrams).toSatisfy(grams(141.238))
  expect(plan.alkaliGrams.naoh).toSatisfy(grams(142.665))
  expect(plan.waterGrams).toSatisfy(grams(332.88))
  expect(plan.totalGrams).toSatisfy(grams(1475.55))
  expect(plan.figures.waterPercentOfOils).toSatisfy(percent(33.29))
  const { balance, totalFattyMatterG } = plan.outcome
  expect(balance.glycerolG).toSatisfy(grams(108.4))
  expect(balance.waterG).toSatisfy(grams(334.31))
  expect(totalFattyMatterG).toSatisfy(grams(955.21))
  const dry = bar(plan, 12)
  expect(dry.g).toSatisfy(near(1296.9, 0.1))
  expect(dry.lossPercent).toSatisfy(percent(12.1))
  expect(dry.tfmPercent).toSatisfy(percent(73.7))
  expect(cureOf(plan).glycerolPercent).toSatisfy(percent(8.4))
})

test('1 again, with water reckoned on pure hydroxide', () => {
  const plan = ready({ ...E1_ORDER, waterOn: 'pure' }, libraryOf(E1))
  expect(plan.waterGrams).toSatisfy(grams(329.56))
})

test('2: NaOH of 98 %, 6 % discount, two of water', () => {
  const plan = ready(
    {
      blend: { tallow: 60, coconut: 20, sunflower: 20 },
      purity: { naoh: 98 },
      superfat: 6,
      water: { ratio: 2 },
    },
    libraryOf({ tallow: 196, coconut: 257, sunflower: 190 }),
  )
  expect(plan.figures.pureHydroxideGrams).toSatisfy(grams(138.713))
  expect(plan.alkaliGrams.naoh).toSatisfy(grams(141.544))
  expect(plan.waterGrams).toSatisfy(grams(283.09))
  expect(plan.totalGrams).toSatisfy(grams(1424.63))
  expect(plan.outcome.balance.glycerolG).toSatisfy(grams(106.46))
  expect(plan.outcome.totalFattyMatterG).toSatisfy(grams(956.01))
  const dry = bar(plan, 12)
  expect(dry.g).toSatisfy(near(1294, 0.1))
  expect(dry.lossPercent).toSatisfy(percent(9.2))
  expect(dry.tfmPercent).toSatisfy(percent(73.9))
})

describe('3: both alkalis, 60 % KOH, with free fatty acid', () => {
  const order = {
    blend: { stearic: 40, coconut: 30, tallow: 30 },
    alkali: { naoh: 40, koh: 60 },
    purity: { naoh: 99, koh: 90 },
    superfat: 3,
    water: { percentOfOils: 45 },
  }
  const from = libraryOf({ stearic: 208, coconut: 257, tallow: 196 }, { stearic: 'free-acid' })

  test('by equivalents', () => {
    const plan = ready(order, from)
    // 3.90511 mol x 0.97 = 3.78795; x 0.4 x 39.997 = 60.603; x 0.6 x 56.106 = 127.516.
    expect(plan.alkaliGrams.naoh).toSatisfy(grams(61.215))
    expect(plan.alkaliGrams.koh).toSatisfy(grams(141.685))
    expect(plan.waterGrams).toSatisfy(grams(450))
    expect(plan.totalGrams).toSatisfy(near(1652.9, 0.05))
    expect(plan.figures.lyeConcentrationPercent).toSatisfy(percent(31.08))
    const { balance, totalFattyMatterG } = plan.outcome
    expect(balance.glycerolG).toSatisfy(grams(72.13))
    expect(balance.waterFormedG).toSatisfy(grams(25.91))
    expect(totalFattyMatterG).toSatisfy(grams(970.2))
  })

  test('by weight of pure hydroxide', () => {
    const plan = ready({ ...order, alkaliBy: 'weight' }, from)
    expect((plan.alkaliGrams.koh ?? NaN) * 0.9).toSatisfy(grams(109.823))
    expect((plan.alkaliGrams.naoh ?? NaN) * 0.99).toSatisfy(grams(73.216))
  })
})

test('4: a salt bar', () => {
  const plan = ready(
    {
      blend: { coconut: 80, olive: 20 },
      superfat: 15,
      additives: [{ additive: 'salt-bar', percentOfOils: 50 }],
    },
    libraryOf({ coconut: 257, olive: 190 }),
  )
  expect(plan.alkaliGrams.naoh).toSatisfy(grams(147.61))
  expect(plan.waterGrams).toSatisfy(grams(295.22))
  expect(plan.totalGrams).toSatisfy(grams(1942.83))
  expect(plan.outcome.balance.glycerolG).toSatisfy(grams(113.29))
  expect(plan.outcome.totalFattyMatterG).toSatisfy(grams(953.19))
  const dry = bar(plan, 8)
  expect(dry.g).toSatisfy(near(1790.9, 0.1))
  expect(dry.lossPercent).toSatisfy(percent(7.8))
  expect(dry.tfmPercent).toSatisfy(percent(53.2))
})

test('5: hot process, 60 g of shea after the cook', () => {
  const plan = ready(
    {
      blend: { lard: 50, coconut: 25, rapeseed: 25 },
      purity: { naoh: 99 },
      superfat: 0,
      extraFat: { percent: 6, of: 'oils', oils: { shea: 100 }, when: 'afterCook' },
      water: { percentOfOils: 38 },
      process: 'hot',
      additives: [{ additive: 'sodium-lactate-60', grams: 30 }],
    },
    libraryOf({ lard: 197, coconut: 257, rapeseed: 188, shea: 183 }),
  )
  expect(plan.alkaliGrams.naoh).toSatisfy(grams(151.038))
  expect(plan.extraFatGrams.shea).toSatisfy(grams(60))
  expect(plan.superfat.typicalPercent).toSatisfy(percent(4.97))
  expect(plan.superfat.extraFat).toEqual({
    ofEquivalentsPercent: expect.closeTo(4.97, 2) as number,
    ofAllFatPercent: expect.closeTo(5.66, 2) as number,
    ofOilsPercent: expect.closeTo(6, 9) as number,
  })
  expect(plan.outcome.balance.glycerolG).toSatisfy(grams(114.76))
  expect(plan.totalGrams).toSatisfy(near(1621, 0.05))
  expect(plan.outcome.totalFattyMatterG).toSatisfy(grams(1012.59))
  const dry = bar(plan, 12)
  expect(dry.g).toSatisfy(near(1394.9, 0.1))
  expect(dry.tfmPercent).toSatisfy(percent(72.6))
})

describe('6: citric acid', () => {
  const order = {
    blend: { sunflower: 30, coconut: 25, cocoa: 20, olive: 25 },
    water: { ratio: 2.2 },
  }
  const from = libraryOf({ sunflower: 190, coconut: 257, cocoa: 194, olive: 190 })

  test('15 g whose hydroxide is weighed on top', () => {
    const acids = [{ acid: 'citric', grams: 15, alkali: 'add' as const }]
    const plan = ready({ ...order, acids }, from)
    // 147.959 x 0.95 = 140.561; 15 x 0.62455 = 9.368; together 149.929; x 2.2 = 329.84.
    expect(plan.alkaliGrams.naoh).toSatisfy(grams(149.929))
    expect(plan.waterGrams).toSatisfy(grams(329.84))
    expect(plan.outcome.balance.saltsG).toSatisfy(grams(20.15))
    expect(plan.outcome.balance.waterFormedG).toSatisfy(grams(4.22))
    expect(plan.superfat.typicalPercent).toSatisfy(percent(5))
  })

  test('15 g that are left to raise the superfat', () => {
    const acids = [{ acid: 'citric', grams: 15, alkali: 'leave' as const }]
    const plan = ready({ ...order, acids }, from)
    expect(plan.alkaliGrams.naoh).toSatisfy(grams(140.561))
    expect(plan.superfat.typicalPercent).toSatisfy(percent(11.33))
    expect(plan.superfat.fromUnpaidAcidsPercent).toSatisfy(percent(6.33))
  })
})

test('7: the first batch out of a 50 % solution', () => {
  const order = { ...E1_ORDER, purity: {}, lyeSolution: { naoh: 50 } }
  const plan = ready(order, libraryOf(E1))
  // 141.238 / 0.50 = 282.476; water 329.556 - 141.238 = 188.318.
  expect(plan.alkaliGrams.naoh).toSatisfy(grams(282.476))
  expect(plan.waterGrams).toSatisfy(grams(188.318))
  expect(plan.water.fromSolutionsG).toSatisfy(grams(141.238))
  expect(plan.figures.lyeConcentrationPercent).toSatisfy(percent(30))
})

describe('8: vinegar as the only liquid', () => {
  const order = { blend: { olive: 100 }, superfat: 4, water: { onlyFromLiquids: true as const } }
  const vinegar = { acid: 'acetic', grams: 260, strengthPercent: 5 }
  const from = libraryOf({ olive: 190 })

  test('whose hydroxide is weighed on top', () => {
    const plan = ready({ ...order, acids: [{ ...vinegar, alkali: 'add' }] }, from)
    expect(plan.alkaliGrams.naoh).toSatisfy(grams(138.688))
    expect(plan.water.fromAcidsG).toSatisfy(grams(247))
    expect(plan.waterGrams).toBe(0)
    expect(plan.figures.lyeConcentrationPercent).toSatisfy(percent(35.96))
    expect(plan.outcome.balance.saltsG).toSatisfy(grams(17.76))
    expect(plan.outcome.balance.waterFormedG).toSatisfy(grams(3.9))
  })

  test('that is left to raise the superfat', () => {
    const plan = ready({ ...order, acids: [{ ...vinegar, alkali: 'leave' }] }, from)
    expect(plan.superfat.typicalPercent).toSatisfy(percent(10.39))
  })
})

test('the soaps of a batch are the acids of its oils, by mol', () => {
  // By hand, one oil of one acid (stearic, 284.48): sodium stearate is 284.48 + 22.990 - 1.008 = 306.46 g/mol.
  const from = libraryOf({ stearic: 189.2 })
  const plan = ready({ blend: { stearic: 100 } }, from)
  const acid = {
    id: 'stearic',
    name: 'stearic',
    shorthand: 'C18:0',
    carbons: 18,
    doubleBonds: 0,
    hydroxyls: 0,
    epoxides: 0,
    meltingPointC: null,
    bisAllylic: 0,
  }
  const [soap, ...more] = soapComposition(plan.outcome, from.oils, new Map([['stearic', acid]]))
  expect(more).toEqual([])
  const mol = (0.95 * 189.2) / 56.105
  expect(soap).toMatchObject({ acid: 'stearic', alkali: 'naoh', percent: 100 })
  expect(soap?.grams).toSatisfy(near(mol * 306.46, 0.05))
})
