import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import oils from '../../data/oils.json'
import { library } from '../../src/data/library'
import { normalised } from '../../src/domain/blend/blend'
import type { BatchOrder, WaterRule } from '../../src/domain/batch/order/order'
import { planBatch } from '../../src/domain/batch/result/plan'

const SEED = 20_264
const RUNS = 400

/** IUPAC 2021, abridged, g/mol: Na 22.990, K 39.098, O 15.999, H 1.008. */
const MOLAR_MASS = { naoh: 22.99 + 15.999 + 1.008, koh: 39.098 + 15.999 + 1.008 }
const SAPONIFICATION = new Map(
  // Of a wax lye reaches a part, of any other fat all.
  oils.map(({ id, saponificationValue, reacts }) => [
    id,
    saponificationValue.typical * (reacts?.cold.typical ?? 1),
  ]),
)

/** A number from low to high with so many decimals, as people type them. */
const typed = (low: number, high: number, decimals = 1) =>
  fc
    .integer({ min: low * 10 ** decimals, max: high * 10 ** decimals })
    .map((whole) => Number((whole / 10 ** decimals).toFixed(decimals)))

const blend = fc
  .uniqueArray(fc.record({ oil: fc.constantFrom(...library.oils.keys()), part: typed(1, 40) }), {
    minLength: 1,
    maxLength: 6,
    selector: ({ oil }) => oil,
  })
  .map((parts) => normalised(Object.fromEntries(parts.map(({ oil, part }) => [oil, part]))))

const alkali = fc.constantFrom(
  { naoh: 100 },
  { koh: 100 },
  { naoh: 40, koh: 60 },
  { naoh: 95, koh: 5 },
)
const water: fc.Arbitrary<WaterRule> = fc.oneof(
  typed(20, 50).map((lyeConcentration) => ({ lyeConcentration })),
  typed(1, 4, 2).map((ratio) => ({ ratio })),
  typed(20, 60).map((percentOfOils) => ({ percentOfOils })),
)
const step = fc.constantFrom(0.001, 0.01, 0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10)

const order: fc.Arbitrary<BatchOrder> = fc.record({
  blend,
  oilGrams: typed(30, 20_000),
  alkali,
  purity: fc.record({ naoh: typed(95, 100), koh: typed(80, 95) }),
  superfat: typed(0, 25),
  water,
})
const weighed = fc
  .record({ order, oilStepG: step, lyeStepG: step })
  .map(({ order, ...scale }): BatchOrder => ({ ...order, scale }))

describe('rounding to a scale', () => {
  test('never leaves less superfat than was asked', () => {
    let reckoned = 0
    holds(weighed, (one) => {
      const plan = planBatch(one, library)
      if (plan.status === 'invalid') return
      reckoned += 1
      const asked = one.superfat / 100
      expect(realSuperfat(one, plan)).toBeGreaterThanOrEqual(asked - 1e-9)
      expect(plan.figures.superfatPercent / 100).toBeCloseTo(realSuperfat(one, plan), 9)
    })
    expect(reckoned).toBeGreaterThan(RUNS / 2)
  })

  test('never leaves a stronger lye than was asked', () => {
    holds(weighed, (one) => {
      const plan = planBatch(one, library)
      if (plan.status === 'invalid' || 'percentOfOils' in one.water) return
      if ('onlyFromLiquids' in one.water) return
      const asked = 'ratio' in one.water ? 100 / (1 + one.water.ratio) : one.water.lyeConcentration
      expect(plan.figures.lyeConcentrationPercent).toBeLessThanOrEqual(asked + 1e-7)
    })
  })

  test('gives only weights that the scale shows', () => {
    holds(weighed, (one) => {
      const plan = planBatch(one, library)
      if (plan.status === 'invalid' || !one.scale) return
      const { oilStepG, lyeStepG } = one.scale
      for (const grams of [...Object.values(plan.oilGrams), plan.waterGrams])
        expect(grams).toSatisfy(multipleOf(oilStepG))
      for (const grams of Object.values(plan.alkaliGrams))
        expect(grams).toSatisfy(multipleOf(lyeStepG))
    })
  })

  test('moves no oil by more than half a step', () => {
    holds(weighed, (one) => {
      const plan = planBatch(one, library)
      if (plan.status === 'invalid' || !one.scale) return
      for (const [oil, grams] of Object.entries(plan.oilGrams)) {
        const exact = ((one.oilGrams ?? NaN) * (one.blend[oil] ?? NaN)) / 100
        expect(Math.abs(grams - exact)).toBeLessThanOrEqual(one.scale.oilStepG / 2 + 1e-9)
      }
    })
  })

  test('refuses a batch only because it rounds to nothing, is mostly wax or its lye would not dissolve', () => {
    holds(weighed, (one) => {
      const plan = planBatch(one, library)
      if (plan.status === 'ready') return
      for (const { message } of plan.problems)
        expect(message).toMatch(
          /rounds to 0 g on the scale|does not stay dissolved|is a wax|did you mean|no more than the scale/u,
        )
    })
  })
})

describe('a batch without a scale', () => {
  test('k times as large has k times each weight', () => {
    holds(fc.tuple(order, typed(1, 50, 2)), ([one, factor]) => {
      const small = planBatch(one, library)
      const large = planBatch({ ...one, oilGrams: (one.oilGrams ?? NaN) * factor }, library)
      expect(large.status).toBe(small.status)
      if (small.status === 'invalid' || large.status === 'invalid') return
      const scaled = weightsOf(small).map(([what, grams]) => [what, grams * factor] as const)
      expect(weightsOf(large)).toEqual(scaled.map(([what, grams]) => [what, closeTo(grams)]))
      expect(large.figures.superfatPercent).toBeCloseTo(small.figures.superfatPercent, 9)
    })
  })

  test('is the same whatever the order of its oils', () => {
    holds(order, (one) => {
      const turned = { ...one, blend: Object.fromEntries(Object.entries(one.blend).toReversed()) }
      const [first, second] = [planBatch(one, library), planBatch(turned, library)]
      expect(second.status).toBe(first.status)
      if (first.status === 'invalid' || second.status === 'invalid') return
      const sorted = weightsOf(first).toSorted()
      expect(weightsOf(second).toSorted()).toEqual(
        sorted.map(([what, grams]) => [what, closeTo(grams)]),
      )
    })
  })

  test('weighs what its parts weigh', () => {
    holds(order, (one) => {
      const plan = planBatch(one, library)
      if (plan.status === 'invalid') return
      const parts = weightsOf(plan).filter(([what]) => what !== 'total')
      expect(parts.reduce((sum, [, grams]) => sum + grams, 0)).toEqual(closeTo(plan.totalGrams))
    })
  })

  test('fills its mould with volume × fill × density', () => {
    const mould = fc.record({
      volumeMl: typed(50, 9_000),
      fillPercent: typed(40, 100),
      densityGPerMl: typed(0.9, 1.2, 2),
    })
    holds(fc.tuple(order, mould), ([one, filled]) => {
      const plan = planBatch({ ...one, oilGrams: undefined, mould: filled }, library)
      if (plan.status === 'invalid') return
      const batter = filled.volumeMl * (filled.fillPercent / 100) * filled.densityGPerMl
      expect(plan.totalGrams).toEqual(closeTo(batter))
    })
  })

  test('takes less lye with every percent of superfat', () => {
    holds(order, (one) => {
      const [lean, rich] = [
        planBatch(one, library),
        planBatch({ ...one, superfat: one.superfat + 1 }, library),
      ]
      if (lean.status === 'invalid' || rich.status === 'invalid') return
      expect(rich.figures.pureHydroxideGrams).toBeLessThan(lean.figures.pureHydroxideGrams)
    })
  })
})

type Ready = Extract<ReturnType<typeof planBatch>, { status: 'ready' }>

function holds<T>(arbitrary: fc.Arbitrary<T>, property: (value: T) => void): void {
  fc.assert(fc.property(arbitrary, property), { seed: SEED, numRuns: RUNS })
}

/** The part of the fat that gets no alkali, from the weights and the data file alone. */
function realSuperfat({ purity }: BatchOrder, { oilGrams, alkaliGrams }: Ready): number {
  const fatMol = Object.entries(oilGrams).reduce((mol, [oil, grams]) => {
    return mol + (grams * (SAPONIFICATION.get(oil) ?? NaN)) / 1000 / MOLAR_MASS.koh
  }, 0)
  const lyeMol = (['naoh', 'koh'] as const).reduce((mol, kind) => {
    const pure = ((alkaliGrams[kind] ?? 0) * (purity[kind] ?? 100)) / 100
    return mol + pure / MOLAR_MASS[kind]
  }, 0)
  return 1 - lyeMol / fatMol
}

function weightsOf({ oilGrams, alkaliGrams, waterGrams, totalGrams }: Ready): [string, number][] {
  return [
    ...Object.entries(oilGrams),
    ...Object.entries(alkaliGrams),
    ['water', waterGrams],
    ['total', totalGrams],
  ]
}

/** Equal but for the last bits of floating point. */
function closeTo(grams: number): number {
  return expect.closeTo(grams, 12 - Math.ceil(Math.log10(Math.max(1, grams)))) as number
}

function multipleOf(stepG: number) {
  return (grams: number) => Math.abs(grams / stepG - Math.round(grams / stepG)) < 1e-6
}
