import { describe, expect, test } from 'vitest'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { libraryOf, near, problemsOf, ready } from '../plans'

const olive = libraryOf({ olive: 190 })
const ORDER: Partial<BatchOrder> = { blend: { olive: 100 }, superfat: 6 }

describe('alkali that comes dissolved', () => {
  test('of both kinds is weighed by its own strength', () => {
    const order = { ...ORDER, alkali: { naoh: 50, koh: 50 }, lyeSolution: { naoh: 50, koh: 45 } }
    const plan = ready(order, olive)
    // By hand: 1000 x 190 / 56105 x 0.94 / 2 = 1.591658 mol of each.
    expect(plan.alkaliGrams.naoh).toSatisfy(near((1.591658 * 39.997) / 0.5, 0.01))
    expect(plan.alkaliGrams.koh).toSatisfy(near((1.591658 * 56.105) / 0.45, 0.01))
    // Water for R = 2 on pure hydroxide, less what the solutions bring.
    const pure = 1.591658 * (39.997 + 56.105)
    const brought = 1.591658 * (39.997 + (56.105 * 55) / 45)
    expect(plan.waterGrams).toSatisfy(near(2 * pure - brought, 0.01))
  })

  test('is refused beside a purity, which would count twice, with the strength that is meant', () => {
    const [problem] = problemsOf({ ...ORDER, purity: { naoh: 97 }, lyeSolution: { naoh: 50 } })
    expect(problem?.path).toBe('lyeSolution.naoh')
    expect(problem?.message).toMatch(/give 48\.5 % and take purity\.naoh out/u)
  })

  test('is refused where it is weaker than the lye asked for', () => {
    const order = { ...ORDER, lyeSolution: { naoh: 25 }, water: { lyeConcentration: 33 } }
    const [problem] = problemsOf(order, olive)
    expect(problem?.path).toBe('water.lyeConcentration')
    expect(problem?.message).toMatch(/more than asked for/u)
  })

  test('may be all the water there is', () => {
    const order = { ...ORDER, lyeSolution: { naoh: 30 }, water: { onlyFromLiquids: true as const } }
    const plan = ready(order, olive)
    expect(plan.waterGrams).toBe(0)
    expect(plan.figures.lyeConcentrationPercent).toBeCloseTo(30, 9)
  })

  test.for([0, -5, 60, NaN])('of %f %% is refused', (naoh) => {
    expect(problemsOf({ ...ORDER, lyeSolution: { naoh } })[0]?.path).toBe('lyeSolution.naoh')
  })
})

describe('a liquid in the place of water', () => {
  test('replaces its part with as much as holds that water', () => {
    const liquids = [{ liquid: 'goat-milk', replacesPercent: 40, when: 'lye' as const }]
    const plan = ready({ ...ORDER, liquids }, olive)
    // By hand: 127.324 g NaOH, 254.648 g water; 40 % is 101.859 g, in milk of 87.7 % water 116.145 g.
    expect(plan.liquidGrams[0]).toSatisfy(near(116.145, 0.02))
    expect(plan.waterGrams).toSatisfy(near(152.789, 0.02))
    expect(plan.figures.waterToHydroxide).toBeCloseTo(2, 9)
  })

  test('brings its own stated water and fat', () => {
    const liquids = [
      {
        liquid: 'coconut-milk',
        grams: 100,
        waterPercent: 80,
        fatPercent: 15,
        when: 'lye' as const,
      },
    ]
    const plan = ready({ ...ORDER, liquids }, olive)
    expect(plan.water.fromLiquidsG).toBeCloseTo(80, 9)
    // By hand: 15 g of 256 mg KOH/g bind 0.06844 mol: 1 - 3.183316 / (3.386507 + 0.068443).
    expect(plan.superfat.typicalPercent).toBeCloseTo(7.862, 2)
  })

  test('that waits for trace leaves the jug stronger', () => {
    const liquids = [{ liquid: 'goat-milk', replacesPercent: 40, when: 'trace' as const }]
    const plan = ready({ ...ORDER, liquids }, olive)
    expect(plan.figures.lyeConcentrationPercent).toBeCloseTo(100 / 3, 9)
    // By hand: 1 / (1 + 0.6 x 2).
    expect(plan.figures.jugConcentrationPercent).toBeCloseTo(45.4545, 3)
  })

  test('that would leave too little water to dissolve the lye is refused', () => {
    const liquids = [{ liquid: 'goat-milk', replacesPercent: 60, when: 'trace' as const }]
    const [problem] = problemsOf({ ...ORDER, liquids }, olive)
    expect(problem?.message).toMatch(/The lye would hold 55\.6 % hydroxide/u)
  })

  test('that brings more water than asked is refused', () => {
    const liquids = [{ liquid: 'tea', grams: 400, when: 'lye' as const }]
    const [problem] = problemsOf({ ...ORDER, liquids }, olive)
    expect(problem?.path).toBe('water.ratio')
    expect(problem?.message).toMatch(/bring 398 g of water, 144 g more than asked for/u)
  })

  test.for([
    [{ liquid: 'dragon-milk', grams: 5 }, 'liquids[0].liquid'],
    [{ liquid: 'tea' }, 'liquids[0]'],
    [{ liquid: 'tea', grams: 5, replacesPercent: 5 }, 'liquids[0]'],
    [{ liquid: 'tea', grams: -5 }, 'liquids[0].grams'],
    [{ liquid: 'tea', replacesPercent: 120 }, 'liquids[0].replacesPercent'],
    [{ liquid: 'tea', grams: 5, waterPercent: 0 }, 'liquids[0].waterPercent'],
    [{ liquid: 'tea', grams: 5, fatPercent: 20 }, 'liquids[0]'],
  ] as const)('%o is refused', ([liquid, path]) => {
    const liquids = [{ ...liquid, when: 'lye' as const }]
    expect(problemsOf({ ...ORDER, liquids }, olive).map((one) => one.path)).toEqual([path])
  })
})

describe('acids', () => {
  test('in percent of the oils are weighed first, and hydroxide for them as weighed', () => {
    const acids = [{ acid: 'citric', percentOfOils: 1.53, alkali: 'add' as const }]
    const plan = ready({ ...ORDER, acids, scale: { oilStepG: 1, lyeStepG: 0.5 } }, olive)
    expect(plan.acidGrams).toEqual([15.5])
    // By hand: 127.324 + 15.5 x 0.62455 = 137.004, down to 137.
    expect(plan.alkaliGrams.naoh).toBe(137)
  })

  test('share both alkalis as the fat does', () => {
    const both = { ...ORDER, alkali: { naoh: 40, koh: 60 } }
    const plain = ready(both, olive)
    const sour = ready({ ...both, acids: [{ acid: 'citric', grams: 10, alkali: 'add' }] }, olive)
    // By hand: 30 / 192.123 mol of groups.
    const more = (kind: 'naoh' | 'koh') =>
      (sour.alkaliGrams[kind] ?? NaN) - (plain.alkaliGrams[kind] ?? NaN)
    expect(more('naoh')).toBeCloseTo((0.4 * 39.997 * 30) / 192.123, 4)
    expect(more('koh')).toBeCloseTo((0.6 * 56.105 * 30) / 192.123, 4)
  })

  test('that take all the hydroxide there is are refused', () => {
    const [problem] = problemsOf(
      { ...ORDER, acids: [{ acid: 'citric', grams: 300, alkali: 'leave' }] },
      olive,
    )
    expect(problem?.message).toMatch(/take all the hydroxide/u)
  })

  test('that are sold as solutions need their strength', () => {
    const [problem] = problemsOf({
      ...ORDER,
      acids: [{ acid: 'acetic', grams: 100, alkali: 'add' }],
    })
    expect(problem?.path).toBe('acids[0].strengthPercent')
    expect(problem?.message).toMatch(/Give its strength in percent by weight, such as 5 or 6/u)
  })

  test.for([
    [{ acid: 'battery', grams: 5 }, 'acids[0].acid'],
    [{ acid: 'citric' }, 'acids[0]'],
    [{ acid: 'citric', grams: -1 }, 'acids[0].grams'],
    [{ acid: 'citric', percentOfOils: 200 }, 'acids[0].percentOfOils'],
    [{ acid: 'lactic', grams: 5, strengthPercent: 101 }, 'acids[0].strengthPercent'],
    [
      { acid: 'lactic', grams: 5, strengthPercent: 80, strengthFromPercent: 88 },
      'acids[0].strengthFromPercent',
    ],
  ] as const)('%o is refused', ([acid, path]) => {
    const acids = [{ ...acid, alkali: 'add' as const }]
    expect(problemsOf({ ...ORDER, acids }).map((one) => one.path)).toEqual([path])
  })
})

describe('additives', () => {
  test('are dosed by the oils and change no lye', () => {
    const additives = [
      { additive: 'sodium-lactate-60', percentOfOils: 2 },
      { additive: 'kaolin', grams: 12 },
    ]
    const plan = ready({ ...ORDER, additives }, olive)
    expect(plan.additiveGrams).toEqual([20, 12])
    expect(plan.alkaliGrams).toEqual(ready(ORDER, olive).alkaliGrams)
    expect(plan.waterGrams).toBeCloseTo(ready(ORDER, olive).waterGrams, 9)
  })

  test('over the usual dose are remarked upon', () => {
    const additives = [{ additive: 'sodium-lactate-60', percentOfOils: 5 }]
    expect(ready({ ...ORDER, additives }, olive).warnings.join(' ')).toMatch(
      /Sodium lactate, 60 % solution: 5\.0 % of the oils is over the usual 1 to 3 %/u,
    )
  })

  test('that round to nothing are refused', () => {
    const order = {
      ...ORDER,
      oilGrams: 100,
      additives: [{ additive: 'tocopherol', percentOfOils: 0.02 }],
      scale: { oilStepG: 1, lyeStepG: 0.1 },
    }
    expect(problemsOf(order, olive)).toEqual([
      { path: 'additives[0]', message: expect.stringMatching(/rounds to 0 g/u) as string },
    ])
  })

  test('that nobody knows are refused, with those that are known', () => {
    const [problem] = problemsOf({ ...ORDER, additives: [{ additive: 'glitter', grams: 1 }] })
    expect(problem?.message).toMatch(/There is no "glitter"\. Use one of sodium-lactate-60, /u)
  })
})

describe('a fragrance', () => {
  const fragrance = { percentOfOils: 3, blend: { lavender: 60, 'orange-sweet': 40 } }

  test('is dosed by the oils and parted by its blend', () => {
    const plan = ready({ ...ORDER, fragrance }, olive)
    expect(plan.fragranceGrams).toEqual({
      lavender: expect.closeTo(18, 9) as number,
      'orange-sweet': expect.closeTo(12, 9) as number,
    })
  })

  test('over what its certificate allows in the dry bar is refused, with the grams allowed', () => {
    const certificates = { lavender: { ifraMostPercent: 1 } }
    const [problem] = problemsOf({ ...ORDER, fragrance: { ...fragrance, certificates } }, olive)
    expect(problem?.path).toBe('fragrance.certificates.lavender')
    // By hand: solids 1000 + 127.32 at 8 % water and 30 g of scent are 1255.4 g; 1 % of it.
    expect(problem?.message).toMatch(
      /lavender would be 1\.43 % .* allows 1 %, which is 12\.6 g here/u,
    )
  })

  test.for([
    [{ ...fragrance, blend: { lavender: 90 } }, 'fragrance.blend'],
    [{ ...fragrance, blend: { lavender: -10, lemon: 110 } }, 'fragrance.blend.lavender'],
    [{ ...fragrance, blend: { moonlight: 100 } }, 'fragrance.blend.moonlight'],
    [{ blend: { lavender: 100 } }, 'fragrance'],
    [
      { ...fragrance, certificates: { lavender: { ifraMostPercent: 0 } } },
      'fragrance.certificates.lavender.ifraMostPercent',
    ],
    [
      { ...fragrance, certificates: { lavender: { flashC: -400 } } },
      'fragrance.certificates.lavender.flashC',
    ],
    [
      {
        ...fragrance,
        certificates: {
          lavender: { allergens: [{ allergen: 'linalool', lowPercent: 40, highPercent: 20 }] },
        },
      },
      'fragrance.certificates.lavender.allergens[0]',
    ],
  ] as const)('%o is refused', ([wrong, path]) => {
    expect(problemsOf({ ...ORDER, fragrance: wrong }, olive).map((one) => one.path)).toContain(path)
  })

  test("of a name of the maker's own is taken with its supplier's allergens", () => {
    const certificates = {
      moonlight: { allergens: [{ allergen: 'coumarin', lowPercent: 1, highPercent: 2 }] },
    }
    const plan = ready(
      { ...ORDER, fragrance: { ...fragrance, blend: { moonlight: 100 }, certificates } },
      olive,
    )
    expect(plan.fragranceGrams).toEqual({ moonlight: expect.closeTo(30, 9) as number })
  })
})

describe('other input is refused with its place', () => {
  test.for<readonly [Partial<BatchOrder>, string]>([
    [{ purityUpTo: { naoh: 120 } }, 'purityUpTo.naoh'],
    [{ lyeSolution: { naoh: 50 }, purityUpTo: { naoh: 99 } }, 'purityUpTo.naoh'],
    [{ water: { onlyFromLiquids: true } }, 'water'],
    [
      {
        water: { onlyFromLiquids: true },
        liquids: [{ liquid: 'tea', replacesPercent: 100, when: 'lye' }],
      },
      'liquids[0].replacesPercent',
    ],
    [{ cook: { extraWaterPercentOfOils: 5 } }, 'cook'],
    [{ process: 'hot', cook: { extraWaterPercentOfOils: -5 } }, 'cook.extraWaterPercentOfOils'],
    [{ lye: { startC: -20 } }, 'lye.startC'],
    [{ lye: { iceGrams: -2 } }, 'lye.iceGrams'],
    [{ lye: { iceGrams: 2000 } }, 'lye.iceGrams'],
    [{ cure: { days: -1 } }, 'cure.days'],
    [{ cure: { finalMoisturePercent: 90 } }, 'cure.finalMoisturePercent'],
    [{ scale: { oilStepG: 1, lyeStepG: 1, lyeErrorG: -1 } }, 'scale.lyeErrorG'],
    [{ pricesPerKg: { olive: -1 } }, 'pricesPerKg.olive'],
    [{ papers: { madeOn: '2026-02-30' } }, 'papers.madeOn'],
    [{ papers: { productCode: 'OIL' } }, 'papers.productCode'],
    [{ papers: { number: 0 } }, 'papers.number'],
  ])('%o', ([order, path]) => {
    expect(problemsOf({ ...ORDER, ...order }, olive).map((one) => one.path)).toEqual([path])
  })
})
