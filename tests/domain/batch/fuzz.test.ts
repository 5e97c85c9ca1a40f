import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import acidsFile from '../../../data/acids.json'
import oilsFile from '../../../data/oils.json'
import { batchFacts } from '../../../src/data/batch-facts'
import { lyeCautions } from '../../../src/data/cautions'
import { labelFacts } from '../../../src/data/label-facts'
import { library } from '../../../src/data/library'
import { actualReport } from '../../../src/domain/batch/actual/actuals'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { planBatch, type ReadyPlan } from '../../../src/domain/batch/result/plan'
import { sheetOf } from '../../../src/domain/batch/sheet/sheet'
import { labelOf } from '../../../src/domain/label/label'
import { hostileOrder, soundOrder } from './random-orders'

const SEED = 61_126
const SOUND_RUNS = 4_000
const HOSTILE_RUNS = 6_000

/** IUPAC 2021, abridged, g/mol, by hand. */
const MASS = { H: 1.008, C: 12.011, O: 15.999, Na: 22.99 }
const NAOH = 22.99 + 15.999 + 1.008
const KOH = 39.098 + 15.999 + 1.008

/** What the leanest lots bind, mg KOH per g; a wax binds nothing. */
const LOW = new Map(
  oilsFile.map(({ id, kind, saponificationValue }) => [
    id,
    kind === 'wax-ester' ? 0 : saponificationValue.low,
  ]),
)

/** Runs a property over random orders; says how many came to a plan. */
function overPlans(
  orders: fc.Arbitrary<BatchOrder>,
  numRuns: number,
  property: (plan: ReadyPlan) => void,
): number {
  let planned = 0
  const check = (order: BatchOrder) => {
    const plan = planBatch(order, library, batchFacts)
    if (plan.status === 'invalid') {
      expect(plan.problems.length).toBeGreaterThan(0)
      for (const { message } of plan.problems) expect(message).toMatch(/\w/u)
      return
    }
    planned += 1
    property(plan)
  }
  fc.assert(fc.property(orders, check), { seed: SEED, numRuns })
  return planned
}

/** Every number in it, with the way there. */
function numbersIn(node: unknown, path = 'plan'): [string, number][] {
  if (typeof node === 'number') return [[path, node]]
  if (node === null || typeof node !== 'object') return []
  return Object.entries(node).flatMap(([key, child]) => numbersIn(child, `${path}.${key}`))
}

function isSound(plan: ReadyPlan): void {
  const wrong = numbersIn({ ...plan, order: null }).filter(([, value]) => !Number.isFinite(value))
  expect(wrong).toEqual([])
  const weights = [
    ...plan.ingredients.map(({ grams }) => grams),
    ...[plan.totalGrams, plan.waterGrams, plan.fresh.freshG],
    ...(plan.cure ? [plan.cure.curedG, plan.cure.driestG, plan.cure.freshG] : []),
    ...numbersIn(plan.outcome.balance).map(([, grams]) => grams),
  ]
  expect(weights.filter((grams) => grams < -1e-9)).toEqual([])
  const sheet = sheetOf(plan, lyeCautions)
  if (sheet.status === 'ready') {
    expect(sheet.sheet.cautions).toEqual(lyeCautions)
    expect(JSON.stringify(sheet.sheet)).not.toMatch(/NaN|Infinity|undefined/u)
  } else expect(plan.blocked).not.toBeNull()
  const label = labelOf(plan, library, labelFacts)
  expect(label.status).toBe(sheet.status)
  expect(JSON.stringify(label)).not.toMatch(/NaN|Infinity|undefined/u)
}

/** Hydroxide that an acid takes, mol per g, from the data file alone. */
function takesPerGram(id: string): number {
  const acid = acidsFile.find((one) => one.id === id)
  if (!acid) throw new Error(`No acid ${id}`)
  const mass = Object.entries(acid.formula).reduce(
    (sum, [element, atoms]) => sum + MASS[element as keyof typeof MASS] * (atoms ?? 0),
    acid.crystalWaters * (2 * MASS.H + MASS.O),
  )
  return acid.acidGroups / mass
}

/** The purest that a bag may be, percent, by the rules that README and page state. */
function purest({ purity, purityIs }: BatchOrder, kind: 'naoh' | 'koh'): number {
  const [stated, is] = [purity[kind] ?? 100, purityIs?.[kind]]
  if (is === 'exactly') return stated
  if (is !== undefined && is !== 'atLeast') return Math.min(100, stated + (is.within ?? 0.5))
  if (kind === 'naoh') return 100
  return Math.max(stated, stated < 92 ? 92 : 95)
}

/** Lye of the worst lots and what their fat and the acids can use of it, mol; from weights and data alone. */
function worst({ order, ...plan }: ReadyPlan) {
  const { oilStepG = 0, lyeStepG = 0, oilErrorG, lyeErrorG } = order.scale ?? {}
  const [oilError, lyeError] = [oilErrorG ?? oilStepG, lyeErrorG ?? lyeStepG]
  const fats = [...Object.entries(plan.oilGrams), ...Object.entries(plan.extraFatGrams)]
  const fat = fats.reduce(
    (mol, [oil, g]) => mol + (Math.max(0, g - oilError) * (LOW.get(oil) ?? NaN)) / 1000 / KOH,
    0,
  )
  const lye = (['naoh', 'koh'] as const).reduce((mol, kind) => {
    const grams = plan.alkaliGrams[kind]
    if (grams === undefined) return mol
    const content = purest(order, kind) / 100
    return mol + ((grams + lyeError) * content) / (kind === 'naoh' ? NAOH : KOH)
  }, 0)
  const acid = plan.acidGrams.reduce((mol, g, i) => {
    const use = order.acids?.[i]
    if (!use) return mol
    const fact = acidsFile.find(({ id }) => id === use.acid)
    const stated = use.strengthPercent ?? 100
    const least = Math.min(use.strengthFromPercent ?? stated, stated * (fact?.leastPart ?? 0)) / 100
    const form = use.formSure ? use.acid : (fact?.weakerForm ?? use.acid)
    return mol + Math.max(0, g - lyeError) * least * takesPerGram(form)
  }, 0)
  return { lye, canUse: fat + acid }
}

/** Ten thousand plans with their papers take some seconds, and more where others use the machine. */
const TIMEOUT_MS = 180_000

describe('10,000 random batches', { timeout: TIMEOUT_MS }, () => {
  test('as makers order them have no NaN, no negative weight and no sheet without cautions', () => {
    expect(overPlans(soundOrder, SOUND_RUNS, isSound)).toBeGreaterThan(SOUND_RUNS / 2)
  })

  test('of nonsense come to a refusal or to a sound plan', () => {
    const planned = overPlans(hostileOrder, HOSTILE_RUNS, isSound)
    expect(planned).toBeGreaterThan(HOSTILE_RUNS / 50)
    expect(planned).toBeLessThan(HOSTILE_RUNS * 0.9)
  })
})

/** Runs of properties that need no ten thousand. */
const RUNS = 1_500

describe('of every batch that can be weighed out', { timeout: TIMEOUT_MS }, () => {
  test('the worst lots have no more lye than their fat can use, unless the sheet says how much', () => {
    const seen = { safe: 0, warned: 0, blocked: 0 }
    overPlans(soundOrder, RUNS, (plan) => {
      if (plan.order.confirmedLean !== undefined) return
      const { lye, canUse } = worst(plan)
      const lean = lye > canUse * (1 + 1e-9)
      const codes = plan.remarks.map(({ code }) => code)
      // Both ways: nothing lean goes unsaid, and nothing is said of what is not lean.
      if (plan.blocked) seen.blocked += 1
      else if (lean) seen.warned += 1
      else seen.safe += 1
      expect(lean).toBe(plan.blocked !== null || codes.includes('lean.worst'))
      expect(plan.superfat.reachPercent.min < 0 && lye > canUse).toBe(lean)
    })
    expect(seen.safe).toBeGreaterThan(RUNS / 10)
    expect(seen.warned).toBeGreaterThan(RUNS / 50)
    expect(seen.blocked).toBeGreaterThan(RUNS / 50)
  })

  test('rounding never leaves less superfat than was asked', () => {
    overPlans(soundOrder, RUNS, ({ superfat }) => {
      expect(superfat.typicalPercent).toBeGreaterThanOrEqual(superfat.askedPercent - 1e-6)
    })
  })

  test('rounding never leaves less superfat than exact weights do', () => {
    overPlans(soundOrder, RUNS / 3, ({ order, superfat }) => {
      const exact = planBatch({ ...order, scale: undefined }, library, batchFacts)
      if (exact.status === 'invalid') return
      // What milk and unpaid acids add moves by a step of their own weight; those batches stand apart.
      if ((order.liquids ?? []).length > 0 || superfat.fromUnpaidAcidsPercent > 0) return
      if (order.extraFat) return
      expect(superfat.typicalPercent).toBeGreaterThanOrEqual(exact.superfat.typicalPercent - 1e-6)
    })
  })

  test('the mass balance closes to a thousandth', () => {
    overPlans(soundOrder, RUNS, ({ outcome, totalGrams }) => {
      const { waterFormedG, impuritiesG, ...parts } = outcome.balance
      const out = Object.values(parts).reduce((sum, grams) => sum + grams, 0)
      expect(waterFormedG + impuritiesG).toBeLessThanOrEqual(parts.waterG + 1e-9)
      expect(Math.abs(out / totalGrams - 1)).toBeLessThan(0.001)
    })
  })

  test('the least safe discount opens a sheet, and a tenth less does not', () => {
    let tried = 0
    // Exact weights and a stated weight of oils, so that nothing else moves with the discount.
    const exact = soundOrder.map(({ mould: _mould, bars: _bars, cut: _cut, ...order }) => ({
      ...order,
      oilGrams: 1000,
      scale: undefined,
      confirmedLean: undefined,
    }))
    overPlans(exact, RUNS, ({ order, superfat }) => {
      const safe = superfat.likely.leastSafePercent
      if (safe === null || safe < 0.5) return
      const at = (superfat: number) => planBatch({ ...order, superfat }, library, batchFacts)
      const [open, shut] = [at(safe), at(safe - 0.1)]
      if (open.status === 'invalid' || shut.status === 'invalid') return
      tried += 1
      expect(open.blocked).toBeNull()
      expect(shut.blocked).not.toBeNull()
    })
    expect(tried).toBeGreaterThan(RUNS / 5)
  })

  test('what is weighed as planned is reckoned as planned', () => {
    overPlans(soundOrder, RUNS / 3, (plan) => {
      const answer = actualReport(plan, {}, library, batchFacts)
      if (answer.status === 'invalid') throw new Error('refused')
      expect(answer.report.superfatPercent).toBeCloseTo(plan.superfat.typicalPercent, 9)
      expect(answer.report.weights.totalGrams).toBeCloseTo(plan.totalGrams, 6)
    })
  })

  test('any weights really weighed are mended for typical and for lean lots', () => {
    const slips = fc.tuple(
      soundOrder,
      fc.array(fc.double({ min: 0, max: 2, noNaN: true }), { maxLength: 8 }),
    )
    const check = ([order, factors]: [BatchOrder, number[]]) => {
      const plan = planBatch(order, library, batchFacts)
      if (plan.status === 'invalid' || plan.blocked) return
      const actuals = Object.fromEntries(
        factors.flatMap((factor, i) => {
          const line = plan.ingredients[i]
          return line ? [[line.key, line.grams * factor]] : []
        }),
      )
      const answer = actualReport(plan, actuals, library, batchFacts)
      if (answer.status === 'invalid') return
      for (const [path, value] of numbersIn(answer.report))
        expect(value, path).toSatisfy(Number.isFinite)
      for (const fix of answer.report.fixes) {
        expect(fix.grams).toBeGreaterThan(0)
        if (fix.kind !== 'addOil') continue
        expect(fix.superfatPercent).toBeGreaterThanOrEqual(plan.superfat.askedPercent - 1e-6)
        if (plan.order.confirmedLean === undefined)
          expect(fix.worstPercent.min).toBeGreaterThan(-1e-6)
      }
      const { topUp } = answer.report
      if (!topUp) return
      expect(topUp.superfatPercent).toBeGreaterThanOrEqual(plan.superfat.askedPercent - 1e-6)
      if (plan.order.confirmedLean === undefined)
        expect(topUp.worstPercent.min).toBeGreaterThan(-1e-6)
    }
    fc.assert(fc.property(slips, check), { seed: SEED, numRuns: RUNS })
  })
})
