import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import acidsFile from '../../../data/acids.json'
import oilsFile from '../../../data/oils.json'
import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { lastCheckProblems } from '../../../src/domain/batch/superfat/last-check'
import { planBatch, type ReadyPlan } from '../../../src/domain/batch/result/plan'
import { PLAIN, ready } from './plans'

/** A hundred thousand orders take half a minute, and more where others use the machine. */
const TIMEOUT_MS = 600_000
const ORDERS = 100_000
const SEED = 120_126

/** IUPAC 2021, abridged, g/mol, by hand. */
const MASS = { H: 1.008, C: 12.011, O: 15.999, Na: 22.99, K: 39.098 }
const NAOH = MASS.Na + MASS.O + MASS.H
const KOH = MASS.K + MASS.O + MASS.H

const OILS = new Map(oilsFile.map((oil) => [oil.id, oil]))
const MOST_SAPONIFICATION = Math.max(...oilsFile.map((oil) => oil.saponificationValue.high))

/** Any figure of several powers of ten, each as likely as the next: fractions, slips of the point, units. */
function anyPower(least: number, most: number): fc.Arbitrary<number> {
  return fc
    .double({ min: Math.log10(least), max: Math.log10(most), noNaN: true })
    .map((power) => Number((10 ** power).toPrecision(3)))
}

/** Mostly what a maker would write, often any power of ten. */
function typed(low: number, high: number, least: number, most: number): fc.Arbitrary<number> {
  const sound = fc
    .double({ min: low, max: high, noNaN: true })
    .map((value) => Number(value.toFixed(1)))
  return fc.oneof({ weight: 3, arbitrary: sound }, { weight: 2, arbitrary: anyPower(least, most) })
}

const knowledge = fc.constantFrom(
  undefined,
  'atLeast' as const,
  'exactly' as const,
  { certificate: 'NA-2207' },
  { certificate: 'NA-2207', within: 0 },
  { certificate: 'x' },
)

const acid = fc.constantFrom(...acidsFile).chain(({ id, usualStrengthsPercent: usual }) => {
  const most = usual.length > 0 ? Math.max(...usual) : 100
  return fc.record({
    acid: fc.constant(id),
    percentOfOils: typed(0.3, 30, 1e-3, 150),
    strengthPercent: typed(most * 0.7, most, 1e-3, 100),
    strengthFromPercent: fc.option(typed(most * 0.3, most * 0.7, 1e-3, 100), { nil: undefined }),
    certificate: fc.constantFrom(undefined, undefined, 'V-120'),
    formSure: fc.constantFrom(undefined, true),
    alkali: fc.constantFrom('add' as const, 'leave' as const),
  })
})

const lots = fc.record({
  saponificationValue: typed(180, 200, 0.1, 1000),
  tolerance: fc.constantFrom(undefined, 0, 1),
  name: fc.constantFrom(undefined, 'OL-7'),
  certificate: fc.constantFrom(undefined, 'CoA 88'),
})

const shares = fc
  .uniqueArray(
    fc.record({ id: fc.constantFrom(...OILS.keys()), part: fc.integer({ min: 1, max: 40 }) }),
    { minLength: 1, maxLength: 5, selector: ({ id }) => id },
  )
  .map((parts) => {
    const total = parts.reduce((sum, { part }) => sum + part, 0)
    return Object.fromEntries(parts.map(({ id, part }) => [id, (part / total) * 100]))
  })

const order: fc.Arbitrary<BatchOrder> = fc
  .record({
    blend: shares,
    oilGrams: typed(200, 20_000, 1e-2, 1e6),
    alkali: fc.constantFrom({ naoh: 100 }, { koh: 100 }, { naoh: 40, koh: 60 }),
    purity: fc.record({ naoh: typed(95, 100, 1e-4, 1000), koh: typed(80, 95, 1e-4, 1000) }),
    purityIs: fc.record({ naoh: knowledge, koh: knowledge }),
    dissolved: fc.option(typed(25, 50, 1e-3, 100), { nil: undefined, freq: 4 }),
    superfat: typed(0, 20, 1e-3, 100),
    water: typed(22, 48, 1e-3, 100).map((lyeConcentration) => ({ lyeConcentration })),
    acids: fc.option(fc.array(acid, { maxLength: 2 }), { nil: undefined, freq: 2 }),
    lot: fc.option(lots, { nil: undefined, freq: 4 }),
    process: fc.constantFrom('cold' as const, 'hot' as const),
    scale: fc.constantFrom(
      undefined,
      { oilStepG: 1, lyeStepG: 1 },
      { oilStepG: 1, lyeStepG: 0.1, lyeErrorG: 0.3 },
    ),
  })
  .map(({ dissolved, lot, purity, ...rest }) => ({
    ...rest,
    ...(dissolved === undefined
      ? { purity }
      : { purity: {}, lyeSolution: { naoh: dissolved, koh: dissolved } }),
    lots: lot && { [Object.keys(rest.blend)[0] ?? 'olive']: lot },
  }))

/** The purest that a bag or bottle may be, percent, by the rules that README and page state. */
function purest({ purity, purityIs, lyeSolution }: BatchOrder, kind: 'naoh' | 'koh'): number {
  const is = purityIs?.[kind]
  const within = typeof is === 'object' ? (is.within ?? 0.5) : undefined
  const solution = lyeSolution?.[kind]
  if (solution !== undefined) return within === undefined ? solution * 1.02 : solution + within
  const stated = purity[kind] ?? 100
  if (within !== undefined) return Math.min(100, stated + within)
  if (is === 'exactly') return stated
  if (kind === 'naoh') return 100
  return Math.max(stated, stated < 92 ? 92 : 95)
}

/** Hydroxide that a gram of acid takes, mol, from the data file alone. */
function takesPerGram(id: string | null): number {
  const fact = acidsFile.find((one) => one.id === id)
  if (!fact) return NaN
  const mass = Object.entries(fact.formula).reduce(
    (sum, [element, atoms]) => sum + MASS[element as keyof typeof MASS] * (atoms ?? 0),
    fact.crystalWaters * (2 * MASS.H + MASS.O),
  )
  return fact.acidGroups / mass
}

/** Mol of alkali at its purest, and what the leanest lots and the weakest acids bind: from weights and data. */
function worst(plan: ReadyPlan, slips = true) {
  const { scale, lots: named = {}, acids = [] } = plan.order
  const oilSlip = slips ? (scale?.oilStepG ?? 0) : 0
  const lyeSlip = slips && scale ? (scale.lyeErrorG ?? scale.lyeStepG) : 0
  let [fat, mostFat] = [0, 0]
  for (const [id, g] of [...Object.entries(plan.oilGrams), ...Object.entries(plan.extraFatGrams)]) {
    const oil = OILS.get(id)
    const value = named[id]?.saponificationValue
    const tolerance = value && Math.max(named[id]?.tolerance ?? value * 0.01, value * 0.005)
    const low = value ? value - (tolerance ?? 0) : (oil?.saponificationValue.low ?? NaN)
    if (oil?.kind !== 'wax-ester') fat += (Math.max(0, g - oilSlip) * low) / 1000 / KOH
    mostFat += (g * Math.max(MOST_SAPONIFICATION, value ?? 0)) / 1000 / KOH
  }
  const alkali = (['naoh', 'koh'] as const).reduce((mol, kind) => {
    const g = plan.alkaliGrams[kind]
    const mass = kind === 'naoh' ? NAOH : KOH
    return g === undefined ? mol : mol + ((g + lyeSlip) * purest(plan.order, kind)) / 100 / mass
  }, 0)
  const acid = plan.acidGrams.reduce((mol, g, i) => {
    const use = acids[i]
    const fact = acidsFile.find(({ id }) => id === use?.acid)
    if (!use || !fact) return NaN
    const stated = use.strengthPercent ?? 100
    const onPaper = use.certificate !== undefined && use.strengthFromPercent !== undefined
    const least = Math.min(
      use.strengthFromPercent ?? stated,
      onPaper ? stated : stated * fact.leastPart,
    )
    const form = use.formSure ? use.acid : (fact.weakerForm ?? use.acid)
    return mol + (Math.max(0, g - lyeSlip) * least * takesPerGram(form)) / 100
  }, 0)
  return { alkali, bound: fat + acid, most: mostFat + acid }
}

describe('a hundred thousand orders over all that a file can hold', { timeout: TIMEOUT_MS }, () => {
  test('hold no alkali beyond the leanest lots that the plan does not name, and none beyond any fat', () => {
    const seen = { refused: 0, safe: 0, warned: 0, blocked: 0 }
    const check = (one: BatchOrder) => {
      const plan = planBatch(one, library, batchFacts)
      if (plan.status === 'invalid') {
        seen.refused += 1
        return
      }
      const { alkali, bound } = worst(plan)
      const weighedRight = worst(plan, false)
      const over = alkali > bound * (1 + 1e-9)
      if (plan.blocked) seen.blocked += 1
      else if (over) seen.warned += 1
      else seen.safe += 1
      expect(weighedRight.alkali).toBeLessThanOrEqual(weighedRight.most * (1 + 1e-9))
      const named = plan.remarks.some(({ code }) => code === 'lean.worst')
      expect(over).toBe(plan.blocked !== null || named)
      if (plan.blocked === null) expect(plan.superfat.likely.freeShare).toBeLessThanOrEqual(1 / 200)
    }
    fc.assert(fc.property(order, check), { seed: SEED, numRuns: ORDERS })
    expect(seen.refused).toBeGreaterThan(ORDERS / 2)
    for (const kind of ['safe', 'warned', 'blocked'] as const)
      expect(seen[kind], kind).toBeGreaterThan(ORDERS / 2000)
  })
})

describe('the last check', () => {
  const order: BatchOrder = { ...PLAIN, superfat: 6, purity: { naoh: 98 } }
  const plan = ready(order)
  const of = (alkali: number) => ({
    order,
    weights: { ...plan, alkaliGrams: { naoh: (plan.alkaliGrams.naoh ?? NaN) * alkali } },
    library,
    facts: batchFacts,
  })

  test('agrees with a plan', () => {
    expect(lastCheckProblems(of(1), plan.superfat.reachPercent.min)).toEqual([])
  })

  test('refuses more alkali than any fat of this weight could take, whatever the plan says', () => {
    // By hand: fat takes at most 265 / 206 as much as this blend's.
    const [problem] = lastCheckProblems(of(1.6), plan.superfat.reachPercent.min)
    expect(problem?.path).toBe('alkali')
    expect(problem?.message).toMatch(/more hydroxide than any fat of this weight could take/u)
  })

  test('refuses weights that are not those the plan speaks of', () => {
    const [problem] = lastCheckProblems(of(1.001), plan.superfat.reachPercent.min)
    expect(problem?.path).toBe('superfat')
    expect(problem?.message).toMatch(/fault of the program/u)
  })
})
