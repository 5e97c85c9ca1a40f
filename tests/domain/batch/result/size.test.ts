import { describe, expect, test } from 'vitest'
import { mouldVolumeMl, pouredMl } from '../../../../src/domain/batch/order/mould'
import { cureOf, libraryOf, near, problemsOf, ready } from '../plans'

describe('the inside of a mould, by hand', () => {
  test.for([
    ['a volume', { volumeMl: 900 }, 900],
    ['a box of 250 x 80 x 60 mm', { boxMm: { length: 250, width: 80, height: 60 } }, 1200],
    [
      'a loaf, 80 mm wide below and 90 mm above: 250 x 85 x 60',
      { loafMm: { length: 250, bottomWidth: 80, topWidth: 90, height: 60 } },
      1275,
    ],
    [
      'a tube of 75 mm, 300 mm long: pi x 37.5 x 37.5 x 300',
      { cylinderMm: { diameter: 75, length: 300 } },
      1325.36,
    ],
    ['12 cavities of 95 ml', { cavities: { count: 12, volumeMl: 95 } }, 1140],
    ['998.2 g of water at 20 °C', { waterGrams: 998.2 }, 1000],
  ] as const)('%s', ([, mould, ml]) => {
    expect(mouldVolumeMl(mould)).toBeCloseTo(ml, 2)
  })

  test('three boxes filled to 90 %', () => {
    const mould = { boxMm: { length: 100, width: 100, height: 50 }, fillPercent: 90, count: 3 }
    expect(pouredMl(mould)).toBeCloseTo(1350, 9)
  })
})

describe('the density of batter from its composition', () => {
  const box = { boxMm: { length: 200, width: 100, height: 50 } }

  test('of an everyday bar lies between 1.00 and 1.05 g/ml (common practice), within 3 %', () => {
    const { density } = ready({ oilGrams: undefined, mould: box })
    expect(density?.from).toBe('composition')
    expect(density?.gPerMl).toBeGreaterThan(1)
    expect(density?.gPerMl).toBeLessThan(1.05)
    expect((density?.highGPerMl ?? NaN) / (density?.gPerMl ?? NaN)).toBeCloseTo(1.03, 9)
  })

  /*
   * Rules of thumb on makers' pages, read: 0.4 oz of oils a cubic inch (0.69 g/ml), 0.7 and 0.75 g/ml, and
   * 450 g of fat for 721 ml (0.62, with room for air). Common practice.
   */
  test('puts 0.62 to 0.75 g of oils into a millilitre, as the rules of thumb do', () => {
    for (const lyeConcentration of [28, 30, 33]) {
      const plan = ready({ oilGrams: undefined, mould: box, water: { lyeConcentration } })
      const oils = Object.values(plan.oilGrams).reduce((sum, grams) => sum + grams, 0)
      expect(oils / 1000).toBeGreaterThan(0.62)
      expect(oils / 1000).toBeLessThan(0.75)
    }
  })

  test('rises by a sixth with half the oils’ weight of salt', () => {
    const at = (order: object) =>
      ready({ oilGrams: undefined, mould: box, ...order }).density?.gPerMl ?? NaN
    const additives = [{ additive: 'salt-bar', percentOfOils: 50 }]
    expect(at({ additives }) / at({})).toSatisfy(near(1.16, 0.02))
  })

  test('hardly moves with the water, by hand 1.004 at 28 % lye and 0.996 at 40 %', () => {
    // 142.4 g NaOH; at 40 °C 1508.6 g in 1000/0.90125 + 508.6/1.2942 ml, 1356 g in 1109.6 + 356/1.4164 ml.
    const from = libraryOf({ olive: 190.7, coconut: 255.8 })
    const at = (lyeConcentration: number) =>
      ready({ oilGrams: undefined, mould: box, water: { lyeConcentration } }, from).density
        ?.gPerMl ?? NaN
    expect(at(28)).toSatisfy(near(1.004, 0.001))
    expect(at(40)).toSatisfy(near(0.9964, 0.001))
  })

  test('is what the mould is filled with', () => {
    const plan = ready({ oilGrams: undefined, mould: box })
    expect(plan.totalGrams).toBeCloseTo(1000 * (plan.density?.gPerMl ?? NaN), 6)
  })

  test('gives way to a stated one', () => {
    const plan = ready({ oilGrams: undefined, mould: { ...box, densityGPerMl: 0.9 } })
    expect(plan.density?.from).toBe('stated')
    expect(plan.totalGrams).toBeCloseTo(900, 6)
  })

  test('is 1.03 as ever for a mould of stated volume', () => {
    const plan = ready({ oilGrams: undefined, mould: { volumeMl: 1000 } })
    expect(plan.density?.from).toBe('usual')
    expect(plan.totalGrams).toBeCloseTo(1030, 6)
  })
})

describe('bars that are ordered by number and weight', () => {
  const bars = { count: 20, grams: 110 }

  test('wet come to their weight and the trimming', () => {
    const plan = ready({ oilGrams: undefined, bars: { ...bars, weight: 'wet', trimPercent: 4 } })
    expect(plan.totalGrams).toBeCloseTo(2288, 6)
    expect(plan.bars?.wetG).toBeCloseTo(110, 6)
    expect(plan.bars?.leftOverG).toBeCloseTo(88, 6)
  })

  test('cured weigh as asked at their final moisture', () => {
    const plan = ready({ oilGrams: undefined, bars: { ...bars, weight: 'cured' } })
    expect(plan.bars?.curedG).toBeCloseTo(110, 6)
    expect(plan.bars?.wetG).toBeCloseTo(110 / (1 - cureOf(plan).lossPercent / 100), 6)
  })

  test('as declared weigh no less when they are as dry as they get', () => {
    const plan = ready({
      oilGrams: undefined,
      bars: { ...bars, weight: 'declared' },
      scale: { oilStepG: 1, lyeStepG: 0.1 },
    })
    expect(plan.bars?.driestG).toBeGreaterThanOrEqual(110)
    expect(plan.bars?.driestG).toBeLessThan(111)
  })
})

describe('a size that additions in grams are part of', () => {
  const acids = [{ acid: 'lactic', grams: 60, strengthPercent: 80, alkali: 'add' as const }]

  test('is met all the same', () => {
    const mould = { volumeMl: 1000, densityGPerMl: 1 }
    const plan = ready({
      oilGrams: undefined,
      mould,
      acids,
      additives: [{ additive: 'kaolin', grams: 30 }],
      // So much acid heats tap water past the boiling point.
      lye: { startC: 5 },
    })
    expect(plan.totalGrams).toBeCloseTo(1000, 6)
  })

  test('is met where liquids bring nearly all of the water', () => {
    const liquids = [{ liquid: 'tea', grams: 150, when: 'lye' as const }]
    const plan = ready({ oilGrams: undefined, mould: { volumeMl: 800, densityGPerMl: 1 }, liquids })
    expect(plan.totalGrams).toBeCloseTo(800, 6)
  })

  test('is refused where they alone are more than it', () => {
    const mould = { volumeMl: 80, densityGPerMl: 1 }
    const [problem] = problemsOf({
      oilGrams: undefined,
      mould,
      additives: [{ additive: 'kaolin', grams: 100 }],
    })
    expect(problem).toEqual({
      path: 'mould.volumeMl',
      message: expect.stringMatching(/more than the size asked for/u) as string,
    })
  })

  test('of a hot process leaves out what boils off', () => {
    const mould = { volumeMl: 1000, densityGPerMl: 1 }
    const plan = ready({
      oilGrams: undefined,
      mould,
      process: 'hot',
      cook: { extraWaterPercentOfOils: 10 },
    })
    expect(plan.fresh.freshG).toBeCloseTo(1000, 6)
    expect(plan.totalGrams - plan.water.cookG).toBeCloseTo(1000, 6)
  })
})

describe('cutting', () => {
  const mould = {
    loafMm: { length: 250, bottomWidth: 80, topWidth: 80, height: 60 },
    densityGPerMl: 1,
  }

  test('gives as many whole slices as the length holds: 250 / 24 mm is 10, and 10 mm are left', () => {
    const plan = ready({ oilGrams: undefined, mould, cut: { thicknessMm: 24 } })
    expect(plan.bars?.count).toBe(10)
    expect(plan.bars?.wetG).toBeCloseTo((1200 * 24) / 250, 6)
    expect(plan.bars?.leftOverG).toBeCloseTo(48, 6)
  })

  test('counts every mould', () => {
    const plan = ready({
      oilGrams: undefined,
      mould: { ...mould, count: 3 },
      cut: { thicknessMm: 25 },
    })
    expect(plan.bars?.count).toBe(30)
    expect(plan.bars?.wetG).toBeCloseTo(120, 6)
  })

  test('to a weight gives as many as there are', () => {
    const plan = ready({ cut: { barGrams: 100 } })
    expect(plan.bars?.count).toBe(Math.floor(plan.totalGrams / 100))
  })

  test('is not known of oils by weight alone', () => {
    expect(ready({}).bars).toBeNull()
  })

  test('of less than a bar is none', () => {
    expect(ready({ oilGrams: 50, cut: { barGrams: 500 } }).bars).toBeNull()
  })

  test.for([
    [{ cut: { thicknessMm: 25 } }, 'cut.thicknessMm'],
    [{ oilGrams: undefined, mould, cut: { thicknessMm: 300 } }, 'cut.thicknessMm'],
    [{ oilGrams: undefined, mould, cut: { thicknessMm: 0 } }, 'cut.thicknessMm'],
    [{ cut: { barGrams: -1 } }, 'cut.barGrams'],
    [{ oilGrams: undefined, mould: { ...mould, count: 1.5 } }, 'mould.count'],
    [
      { oilGrams: undefined, mould: { cavities: { count: 0, volumeMl: 80 } } },
      'mould.cavities.count',
    ],
    [{ oilGrams: undefined, mould: { waterGrams: NaN } }, 'mould.waterGrams'],
    [
      { oilGrams: undefined, mould: { cylinderMm: { diameter: -1, length: 9 } } },
      'mould.cylinderMm.diameter',
    ],
    [{ oilGrams: undefined, bars: { count: 0, grams: 100, weight: 'wet' } }, 'bars.count'],
    [{ oilGrams: undefined, bars: { count: 5, grams: 0, weight: 'wet' } }, 'bars.grams'],
    [
      { oilGrams: undefined, bars: { count: 5, grams: 90, weight: 'wet', trimPercent: 80 } },
      'bars.trimPercent',
    ],
    [{ bars: { count: 5, grams: 90, weight: 'wet' } }, 'oilGrams'],
  ] as const)('%o is refused', ([order, path]) => {
    expect(problemsOf(order).map((one) => one.path)).toEqual([path])
  })
})

test('a batch k times as large by its mould has k times each weight', () => {
  const from = libraryOf({ olive: 190, coconut: 257 })
  const mould = { boxMm: { length: 100, width: 100, height: 100 } }
  const [one, four] = [1, 4].map((count) =>
    ready({ oilGrams: undefined, mould: { ...mould, count } }, from),
  )
  expect(four?.oilGrams.olive).toSatisfy(near(4 * (one?.oilGrams.olive ?? NaN), 1e-6))
  expect(four?.alkaliGrams.naoh).toSatisfy(near(4 * (one?.alkaliGrams.naoh ?? NaN), 1e-6))
})

test('bars of a declared weight keep half a percent over it when they are as dry as they get', () => {
  const scale = { oilStepG: 1, lyeStepG: 0.1 }
  for (const [count, grams] of [
    [12, 100],
    [7, 85],
  ] as const) {
    const plan = ready({
      superfat: 6,
      scale,
      oilGrams: undefined,
      bars: { count, grams, weight: 'declared' },
    })
    // A step of each line is less than a fifth of the half percent here.
    expect(plan.bars?.driestG).toBeGreaterThan(grams * 1.004)
    expect(plan.bars?.driestG).toBeLessThan(grams * 1.01)
  }
})
