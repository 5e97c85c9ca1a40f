import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { BATTER_DENSITY_G_PER_ML, type BatchOrder } from '../../../../src/domain/batch/order/order'
import { planBatch } from '../../../../src/domain/batch/result/plan'
import { libraryOfSaponification } from '../../blend/stub-library'

const ORDER: BatchOrder = {
  blend: { olive: 70, coconut: 30 },
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: {},
  superfat: 5,
  water: { ratio: 2 },
}
const stub = libraryOfSaponification({ olive: 190, coconut: 257 })

describe('a mould', () => {
  const mould = { volumeMl: 1200, fillPercent: 90, densityGPerMl: 1.05 }

  test('is filled by weight: volume × fill × density', () => {
    // By hand: 1200 × 0.9 × 1.05.
    const plan = ready({ ...ORDER, oilGrams: undefined, mould })
    expect(plan.totalGrams).toBeCloseTo(1134, 9)
    expect(plan.figures.densityGPerMl).toBe(1.05)
  })

  test('is filled to the top with a batter of 1.03 g/ml where nothing else is said', () => {
    const plan = ready({ ...ORDER, oilGrams: undefined, mould: { volumeMl: 1000 } })
    expect(BATTER_DENSITY_G_PER_ML).toBe(1.03)
    expect(plan.totalGrams).toBeCloseTo(1030, 9)
    expect(plan.figures.densityGPerMl).toBe(1.03)
  })

  test('gives the same batch as the weight of oils that it holds', () => {
    const filled = ready({ ...ORDER, oilGrams: undefined, mould })
    const weighed = ready({ ...ORDER, oilGrams: sum(filled.oilGrams) })
    expect(filled.alkaliGrams.naoh).toBeCloseTo(weighed.alkaliGrams.naoh ?? NaN, 9)
    expect(filled.waterGrams).toBeCloseTo(weighed.waterGrams, 9)
  })

  test('is not asked about where the oils are weighed', () => {
    expect(ready(ORDER).figures.densityGPerMl).toBeNull()
  })
})

describe('the figures of a batch', () => {
  test('agree with each other and with the weights', () => {
    const both = { alkali: { naoh: 40, koh: 60 }, purity: { naoh: 99, koh: 90 } }
    const plan = ready({ ...ORDER, ...both, scale: { oilStepG: 1, lyeStepG: 0.1 } })
    const lye = sum(plan.alkaliGrams)
    expect(plan.figures.waterToHydroxide).toBeCloseTo(plan.waterGrams / lye, 12)
    expect(plan.figures.lyeConcentrationPercent).toBeCloseTo(
      (100 * lye) / (lye + plan.waterGrams),
      9,
    )
    expect(plan.figures.waterPercentOfOils).toBeCloseTo(plan.waterGrams / 10, 9)
    expect(plan.totalGrams).toBeCloseTo(1000 + lye + plan.waterGrams, 9)
    const { naoh = NaN, koh = NaN } = plan.alkaliGrams
    expect(plan.figures.pureHydroxideGrams).toBeCloseTo(naoh * 0.99 + koh * 0.9, 9)
  })

  test('tell the superfat as asked where nothing is rounded', () => {
    expect(ready(ORDER).figures.superfatPercent).toBeCloseTo(5, 9)
  })

  test('tell the superfat that a coarse scale really gives', () => {
    // By hand: (700 × 190 + 300 × 257) / 56105 = 3.744764 mol; × 0.95 × 39.997 = 142.29 g, weighed as
    // 140 g, which are 3.500263 mol; 1 - 3.500263 / 3.744764 = 6.529 %.
    const plan = ready({ ...ORDER, scale: { oilStepG: 10, lyeStepG: 10 } })
    expect(plan.alkaliGrams.naoh).toBe(140)
    expect(plan.figures.superfatPercent).toBeCloseTo(6.529, 3)
  })
})

describe('the superfat of the leanest and the richest lots', () => {
  const varying = libraryOfSaponification({ olive: [180, 190, 200] })
  const order = { ...ORDER, blend: { olive: 100 } }

  test('follows the natural range of the saponification value', () => {
    const { min, max } = ready(order, varying).figures.superfatSpanPercent
    // By hand: lye for 95 % of 190 is 1 - 0.95 × 190 / 180 = -0.2778 % to 1 - 0.95 × 190 / 200 = 9.75 %.
    expect(min).toBeCloseTo(-0.2778, 3)
    expect(max).toBeCloseTo(9.75, 9)
  })

  test('is warned of where it could leave free lye, with the superfat that would not', () => {
    // By hand: 1 - 180 / 190 = 5.263 %, the next tenth is 5.3.
    expect(ready(order, varying).blocked).toMatchObject({ leastSafePercent: 5.3 })
    const open = ready({ ...order, superfat: 5.3 }, varying)
    expect([open.blocked, open.warnings]).toEqual([null, []])
  })
})

describe('water outside what is usual for bars is warned of', () => {
  const steady = { ...ORDER, superfat: 8 }

  test.for([
    [45, /^Lye at 45\.0 % is stronger than the usual 25 to 40 %/u],
    [20, /^Lye at 20\.0 % is weaker than the usual 25 to 40 %/u],
  ] as const)('at %d %% lye', ([lyeConcentration, message]) => {
    expect(ready({ ...steady, water: { lyeConcentration } }).warnings).toEqual([
      expect.stringMatching(message) as string,
    ])
  })

  test.for([25, 33, 40])('and not at %d %% lye', (lyeConcentration) => {
    expect(ready({ ...steady, water: { lyeConcentration } }).warnings).toEqual([])
  })
})

test('a superfat asked of the real oils as their warning says leaves no lot lye-heavy', () => {
  // No lye can be reckoned for a batch that is all wax; that it is refused is tested with the waxes.
  const fats = [...library.oils.values()].filter((one) => one.kind !== 'wax-ester' && !one.reacts)
  for (const { id: oil } of fats) {
    const order = { ...ORDER, blend: { [oil]: 100 }, superfat: 1 }
    const { leastSafePercent: worst, likely } = ready(order, library).superfat
    const raised = ready({ ...order, superfat: worst ?? NaN }, library)
    expect(raised.figures.superfatSpanPercent.min, oil).toBeGreaterThanOrEqual(-1e-9)
    const less = ready({ ...order, superfat: (worst ?? NaN) - 0.1 }, library)
    expect(less.figures.superfatSpanPercent.min, oil).toBeLessThan(0)
    const likely5 = ready({ ...order, superfat: likely.leastSafePercent ?? NaN }, library)
    expect(likely5.blocked, oil).toBeNull()
  }
})

function ready(order: BatchOrder, from: Parameters<typeof planBatch>[1] = stub) {
  const plan = planBatch(order, from)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  return plan
}

function sum(grams: Readonly<Record<string, number | undefined>>): number {
  return Object.values(grams).reduce<number>((total, one) => total + (one ?? 0), 0)
}

test('the jug holds the cook’s water too while the hydroxide dissolves', () => {
  const plan = ready({ ...ORDER, process: 'hot', cook: { extraWaterPercentOfOils: 10 } })
  const hydroxide = plan.alkaliGrams.naoh ?? NaN
  // By hand: 2 g of water for each g, and 10 % of 1000 g more.
  expect(plan.figures.jugConcentrationPercent).toBeCloseTo(
    (hydroxide / (hydroxide + 2 * hydroxide + 100)) * 100,
    9,
  )
})
