import fc from 'fast-check'
import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import { soapKindOf } from '../../../src/domain/batch/order/soap-kind'
import type { BatchOrder } from '../../../src/domain/batch/order/order'

/** A number from low to high with so many decimals, as people type them. */
export function typed(low: number, high: number, decimals = 1): fc.Arbitrary<number> {
  const scale = 10 ** decimals
  return fc
    .integer({ min: Math.round(low * scale), max: Math.round(high * scale) })
    .map((whole) => Number((whole / scale).toFixed(decimals)))
}

/** Shares of some ids, adding to 100. */
function shares(ids: readonly string[], most: number): fc.Arbitrary<Record<string, number>> {
  const part = fc.record({ id: fc.constantFrom(...ids), part: typed(1, 40) })
  return fc
    .uniqueArray(part, { minLength: 1, maxLength: most, selector: ({ id }) => id })
    .map((parts) => {
      const total = parts.reduce((sum, one) => sum + one.part, 0)
      return Object.fromEntries(parts.map(({ id, part }) => [id, (part / total) * 100]))
    })
}

function maybe<T>(arbitrary: fc.Arbitrary<T>, freq = 3): fc.Arbitrary<T | undefined> {
  return fc.option(arbitrary, { nil: undefined, freq })
}

const OILS = [...library.oils.keys()]
const alkali = fc.constantFrom({ naoh: 100 }, { koh: 100 }, { naoh: 40, koh: 60 })
const purity = fc.record({ naoh: typed(95, 100), koh: typed(80, 95) })
const purityIs = fc.record({
  naoh: fc.constantFrom('atLeast' as const, 'exactly' as const, {
    certificate: 'NA-2207',
    within: 0.3,
  }),
  koh: fc.constantFrom('atLeast' as const, 'exactly' as const, { certificate: 'KA-118' }),
})
const step = fc.constantFrom(0.01, 0.1, 0.25, 1, 2, 5, 28.349523125 / 10)

const water = fc.oneof(
  { weight: 3, arbitrary: typed(20, 45).map((lyeConcentration) => ({ lyeConcentration })) },
  { weight: 2, arbitrary: typed(1.2, 4, 2).map((ratio) => ({ ratio })) },
  { weight: 2, arbitrary: typed(25, 60).map((percentOfOils) => ({ percentOfOils })) },
  { weight: 1, arbitrary: fc.constant({ onlyFromLiquids: true as const }) },
)

/** Solutions about as strong as they are sold, the rest nearly pure. */
const acid = fc
  .constantFrom(...batchFacts.acids.values())
  .chain(({ id, usualStrengthsPercent }) => {
    const usual = usualStrengthsPercent.length > 0 ? Math.max(...usualStrengthsPercent) : 100
    return fc
      .record({
        acid: fc.constant(id),
        percentOfOils: typed(0, 3),
        strengthPercent: typed(usual * 0.8, usual),
        weaker: typed(0, usual * 0.3),
        formSure: fc.boolean(),
        alkali: fc.constantFrom('add' as const, 'leave' as const),
      })
      .map(({ weaker, ...one }) => ({ ...one, strengthFromPercent: one.strengthPercent - weaker }))
  })

const liquid = fc.record({
  liquid: fc.constantFrom(...batchFacts.liquids.keys()),
  replacesPercent: typed(5, 45),
  when: fc.constantFrom('lye' as const, 'trace' as const),
})

const additive = fc.record({
  additive: fc.constantFrom(...batchFacts.additives.keys()),
  percentOfOils: typed(0.1, 5),
})

const size = fc.oneof(
  typed(100, 20_000).map((oilGrams) => ({ oilGrams })),
  typed(200, 5000).map((volumeMl) => ({ mould: { volumeMl } })),
  fc.tuple(typed(50, 300), typed(40, 90)).map(([length, side]) => ({
    mould: { boxMm: { length, width: side, height: side } },
    cut: { thicknessMm: 25 },
  })),
  fc.constantFrom('wet' as const, 'cured' as const, 'declared' as const).map((weight) => ({
    bars: { count: 12, grams: 110, weight, trimPercent: 3 },
  })),
)

const process = fc.oneof(
  fc.constant({}),
  fc.record({
    process: fc.constant('hot' as const),
    cook: maybe(fc.record({ extraWaterPercentOfOils: typed(0, 10) })),
    extraFat: fc.record({
      percent: typed(0, 8),
      of: fc.constantFrom('equivalents' as const, 'allFat' as const, 'oils' as const),
      oils: shares(OILS, 2),
      when: fc.constantFrom('withOils' as const, 'afterCook' as const),
    }),
  }),
)

/** An order as a maker might give it, with any of the additions. */
export const soundOrder: fc.Arbitrary<BatchOrder> = fc
  .record({
    blend: shares(OILS, 5),
    size,
    process,
    alkali,
    alkaliBy: fc.constantFrom('mol' as const, 'weight' as const),
    purity,
    purityIs: maybe(purityIs),
    superfat: typed(0, 20),
    water,
    waterOn: fc.constantFrom('weighed' as const, 'pure' as const),
    acids: maybe(fc.array(acid, { maxLength: 2 })),
    liquids: maybe(fc.array(liquid, { maxLength: 2 })),
    additives: maybe(fc.array(additive, { maxLength: 3 })),
    fragrance: maybe(
      fc.record({ percentOfOils: typed(0.5, 4), blend: shares([...batchFacts.scents.keys()], 3) }),
    ),
    lye: maybe(fc.record({ startC: typed(0, 40) })),
    scale: fc
      .tuple(step, step)
      .map(([oilStepG, lyeStepG]) => ({ oilStepG, lyeStepG: Math.min(lyeStepG, oilStepG) })),
    confirmedLean: fc.constantFrom(
      undefined,
      undefined,
      undefined,
      undefined,
      'Titrated olive and coconut',
    ),
  })
  .map(({ size, process, ...order }) => ({
    ...order,
    ...(soapKindOf({ ...order, blend: {} }) === 'paste' ? vesselOf(size) : size),
    ...process,
  }))

/** A size that a paste can have: what would be bars or cut is so many g of oils, or the mould alone. */
function vesselOf(size: Pick<BatchOrder, 'oilGrams' | 'mould' | 'bars'>) {
  return size.mould ? { mould: size.mould } : { oilGrams: size.oilGrams ?? 1320 }
}

/** Numbers that no scale shows and no maker means. */
const HOSTILE = [
  ...[NaN, Infinity, -Infinity, -1, 0, -0, 1e308, -1e308, 5e-324, 1e-9, 1e12, 100, 101, 99.999],
  ...[-100, 0.134, 134, 1.5, Number.MAX_SAFE_INTEGER],
]

/** The same order with some of its numbers turned to nonsense. */
export const hostileOrder: fc.Arbitrary<BatchOrder> = fc
  .tuple(
    soundOrder,
    fc.array(fc.tuple(fc.nat(), fc.constantFrom(...HOSTILE)), { minLength: 1, maxLength: 4 }),
  )
  .map(([order, changes]) =>
    changes.reduce((one, [place, value]) => withNumberAt(one, place, value), order),
  )

/** A copy with the number at that place (counted round) replaced. */
function withNumberAt<T>(order: T, place: number, value: number): T {
  const target = place % Math.max(1, numbersIn(order))
  let seen = -1
  const walk = (node: unknown): unknown => {
    if (typeof node === 'number') return ++seen === target ? value : node
    if (Array.isArray(node)) return node.map(walk)
    if (node !== null && typeof node === 'object')
      return Object.fromEntries(Object.entries(node).map(([key, child]) => [key, walk(child)]))
    return node
  }
  return walk(order) as T
}

function numbersIn(node: unknown): number {
  if (typeof node === 'number') return 1
  if (node === null || typeof node !== 'object') return 0
  return Object.values(node).reduce<number>((count, child) => count + numbersIn(child), 0)
}
