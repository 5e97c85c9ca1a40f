import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type BuyingList, type BuyingNeed, buyingList } from '../../../src/domain/cost/buying'
import { cheapestCover, covers } from '../../../src/domain/cost/cover'
import type { Offer, SupplierTerms } from '../../../src/domain/cost/offer'
import { orderMinor, landedSteps } from '../../../src/domain/cost/offer'
import { bookOf, KG, offer, supplies, TODAY } from './books'
import { solveMixed } from './loaded-highs'

const SECONDS = 30

function buy(
  offers: readonly Offer[],
  needs: readonly BuyingNeed[],
  suppliers: readonly SupplierTerms[] = [],
  wastePercent = 0,
): BuyingList {
  const pricing = {
    book: bookOf(offers, { suppliers }),
    materialOf: (id: string) => ({ name: id }),
    on: TODAY,
  }
  const list = buyingList(needs, pricing, { wastePercent, seconds: SECONDS }, solveMixed)
  if (list.status !== 'ready') throw new Error('Time ran out')
  return list
}

const packsOf = ({ lines }: BuyingList) =>
  lines.map(({ packs }) => packs.map(({ packs: count, supply }) => [count, supply.offer.supplier]))

const NORTH = { supplier: 'North' }
const SOUTH = { supplier: 'South' }
const OFFERS = [
  offer('olive', 5, 'kg', 3000, NORTH),
  offer('olive', 5, 'kg', 2900, SOUTH),
  offer('coconut', 5, 'kg', 2000, NORTH),
  offer('coconut', 5, 'kg', 2300, SOUTH),
]
const NEEDS = [
  { material: 'olive', need: 10 * KG },
  { material: 'coconut', need: 5 * KG },
]

describe('freight of 9.00 an order', () => {
  test('is paid once rather than twice', () => {
    // By hand: all of North 60 + 20 + 9 = 89.00; all of South 58 + 23 + 9 = 90.00;
    // the cheaper of each 58 + 20 + 9 + 9 = 96.00.
    const terms = [NORTH, SOUTH].map((one) => ({ ...one, freightMinor: 900 }))
    const list = buy(OFFERS, NEEDS, terms)
    expect(list).toMatchObject({
      goodsMinor: 8000,
      freightMinor: 900,
      totalMinor: 8900,
      proved: true,
    })
    expect(packsOf(list)).toEqual([[[2, 'North']], [[1, 'North']]])
  })

  test('is saved by a supplier who sends goods of 81.00 free', () => {
    // By hand: South's goods come to 81.00 and go free; North stays at 89.00.
    const terms = [
      { ...NORTH, freightMinor: 900 },
      { ...SOUTH, freightMinor: 900, freeFromMinor: 8100 },
    ]
    expect(buy(OFFERS, NEEDS, terms)).toMatchObject({ totalMinor: 8100, freightMinor: 0 })
  })

  test('is saved by buying a pack more where that is cheaper', () => {
    // By hand: 2 packs of 30.00 and 9.00 are 69.00; a jar of 5.00 more reaches 65.00 and goes free.
    const jar = offer('olive', 0.25, 'kg', 500, NORTH)
    const terms = [{ ...NORTH, freightMinor: 900, freeFromMinor: 6500 }]
    const list = buy(
      [offer('olive', 5, 'kg', 3000, NORTH), jar],
      [{ material: 'olive', need: 10 * KG }],
      terms,
    )
    expect(list).toMatchObject({ goodsMinor: 6500, freightMinor: 0 })
  })

  test('says what lacks until it is free', () => {
    const terms = [{ ...NORTH, freightMinor: 900, freeFromMinor: 20_000 }]
    const list = buy(
      [offer('olive', 5, 'kg', 3000, NORTH)],
      [{ material: 'olive', need: 10 * KG }],
      terms,
    )
    // By hand: 200.00 − 60.00.
    expect(list.orders).toEqual([
      { supplier: 'North', goodsMinor: 6000, freightMinor: 900, toFreeMinor: 14_000 },
    ])
  })
})

test('no order goes below the least a supplier takes', () => {
  // By hand: South would be 29.00 but takes no order under 50.00; North asks 30.00.
  const list = buy(
    OFFERS,
    [{ material: 'olive', need: 5 * KG }],
    [{ ...SOUTH, leastOrderMinor: 5000 }],
  )
  expect(packsOf(list)).toEqual([[[1, 'North']]])
})

test('what is in stock is not bought, and waste is bought on top', () => {
  const needs = [{ material: 'olive', need: 9.8 * KG, stock: 5.5 * KG }]
  // By hand: 9.8 / 0.98 = 10 kg, less 5.5 = 4.5: one pack, and 0.5 kg is left.
  const [line] = buy(OFFERS, needs, [], 2).lines
  expect(line).toMatchObject({ minor: 2900, stock: 5500 })
  expect(line?.leftover).toBeCloseTo(500, 6)
  // 29.00 × 0.5 / 5
  expect(line?.leftoverMinor).toBe(290)
  expect(buy(OFFERS, [{ material: 'olive', need: 5 * KG, stock: 6 * KG }])).toMatchObject({
    totalMinor: 0,
    lines: [{ packs: [], leftover: 1000 }],
  })
})

test('the next better size says what it costs more, saves, and from when it pays', () => {
  const can = offer('olive', 5, 'kg', 3500)
  const drum = offer('olive', 25, 'kg', 14_000)
  const { better } = buy([can, drum], [{ material: 'olive', need: 5 * KG }]).lines[0] ?? {}
  // By hand: 35.00 for 5 kg is 7.00 a kg, 140.00 for 25 kg is 5.60: 20 % less, 105.00 and 20 kg more;
  // 140.00 / 7.00 = 20 kg.
  expect(better).toMatchObject({ offer: drum, packs: 1, moreMinor: 10_500, moreAmount: 20 * KG })
  expect(better?.savesPercent).toBeCloseTo(20, 9)
  expect(better?.paysFromAmount).toBeCloseTo(20 * KG, 6)
})

test('what has no price is named, and the rest is bought', () => {
  const list = buy(OFFERS, [...NEEDS, { material: 'naoh', need: 700 }])
  expect(list.missing.map(({ material }) => material)).toEqual(['naoh'])
  // By hand: 2 × 29.00 + 20.00.
  expect(list.totalMinor).toBe(7800)
})

// The Frobenius number of packs of a and b, coprime, is ab − a − b (J. J. Sylvester 1882): what can't be
// had exactly, though everything above can. At one minor unit a piece a need then costs itself, or one more.
test.each([
  [3, 5],
  [5, 7],
  [8, 11],
  [9, 20],
])('packs of %d and %d pieces meet every need above their Frobenius number exactly', (a, b) => {
  const choice = supplies([offer('box', a, 'piece', a), offer('box', b, 'piece', b)])
  const largest = a * b - a - b
  expect(cheapestCover(choice, largest)?.minor).toBe(largest + 1)
  for (let need = largest + 1; need <= largest + a; need++)
    expect(cheapestCover(choice, need)?.minor).toBe(need)
})

test('packs of 6, 9 and 20 can’t make 43, and make all above', () => {
  // A well-known case of the Frobenius problem (J. L. Ramírez Alfonsín, 2005, chapter 1).
  const choice = supplies([6, 9, 20].map((size) => offer('box', size, 'piece', size)))
  const costs = [43, 44, 45, 46, 47, 48, 49].map((need) => cheapestCover(choice, need)?.minor)
  expect(costs).toEqual([44, 44, 45, 46, 47, 48, 49])
})

const someOffer = (material: string, supplier: string): fc.Arbitrary<Offer> =>
  fc
    .record({
      size: fc.integer({ min: 1, max: 6 }),
      priceMinor: fc.integer({ min: 100, max: 3000 }),
      least: fc.integer({ min: 1, max: 2 }),
      step: fc.option(fc.integer({ min: 1, max: 2 })),
    })
    .map(({ size, priceMinor, least, step }) =>
      offer(
        material,
        size,
        'kg',
        [
          { fromPacks: least, priceMinor },
          ...(step === null
            ? []
            : [{ fromPacks: least + step, priceMinor: Math.round(priceMinor * 0.8) }]),
        ],
        { supplier },
      ),
    )
const someTerms = (supplier: string): fc.Arbitrary<SupplierTerms> =>
  fc.record({
    supplier: fc.constant(supplier),
    freightMinor: fc.option(fc.integer({ min: 100, max: 2000 }), { nil: undefined }),
    freeFromMinor: fc.option(fc.integer({ min: 500, max: 6000 }), { nil: undefined }),
    leastOrderMinor: fc.option(fc.integer({ min: 200, max: 4000 }), { nil: undefined }),
  })
const small = fc.record({
  offers: fc.tuple(
    someOffer('olive', 'North'),
    someOffer('olive', 'South'),
    someOffer('coconut', 'North'),
    someOffer('coconut', 'South'),
  ),
  terms: fc.tuple(someTerms('North'), someTerms('South')),
  olive: fc.integer({ min: 1, max: 8 }),
  coconut: fc.integer({ min: 0, max: 8 }),
})

/** Packs of one offer tried by brute force: enough to reach any sum asked for above. */
const MOST_TRIED = 70

/** The least money of all numbers of packs, freight and least orders reckoned plainly. */
function byBruteForce(
  offers: readonly Offer[],
  needs: readonly BuyingNeed[],
  terms: readonly SupplierTerms[],
): number {
  const steps = offers.map((one) => landedSteps(one, bookOf([])) ?? [])
  let best = Infinity
  const counts = offers.map(() => 0)
  const cost = () => {
    for (const { material, need } of needs) {
      const amount = offers.reduce(
        (sum, one, at) =>
          one.material === material ? sum + one.size * KG * (counts[at] ?? 0) : sum,
        0,
      )
      if (!covers(amount, need)) return Infinity
    }
    let total = 0
    for (const {
      supplier,
      freightMinor = 0,
      freeFromMinor = Infinity,
      leastOrderMinor = 0,
    } of terms) {
      const own = offers.flatMap((one, at) =>
        one.supplier === supplier && (counts[at] ?? 0) > 0 ? [at] : [],
      )
      if (own.length === 0) continue
      const goods = own.reduce(
        (sum, at) => sum + (orderMinor(steps[at] ?? [], counts[at] ?? 0) ?? Infinity),
        0,
      )
      if (goods < leastOrderMinor) return Infinity
      total += goods + (goods >= freeFromMinor ? 0 : freightMinor)
    }
    return total
  }
  const goodsSoFar = (at: number) =>
    counts
      .slice(0, at)
      .reduce(
        (sum, count, i) => sum + (count > 0 ? (orderMinor(steps[i] ?? [], count) ?? 0) : 0),
        0,
      )
  const walk = (at: number): void => {
    if (at === offers.length) {
      best = Math.min(best, cost())
      return
    }
    for (let count = 0; count <= MOST_TRIED; count++) {
      counts[at] = count
      if (goodsSoFar(at + 1) >= best) {
        // One more of the same may reach a cheaper step; two more can't be cheaper than the best.
        if (count > 6) break
        continue
      }
      walk(at + 1)
    }
    counts[at] = 0
  }
  walk(0)
  return best
}

test('the list is the cheapest there is, by brute force, with steps, freight and least orders', () => {
  fc.assert(
    fc.property(small, ({ offers, terms, olive, coconut }) => {
      const needs = [
        { material: 'olive', need: olive * KG },
        { material: 'coconut', need: coconut * KG },
      ]
      const list = buy(offers, needs, terms)
      expect(list.proved).toBe(true)
      // Nothing is bought that no batch needs, not even to reach a sum.
      const wanted = offers.filter(({ material }) => material === 'olive' || coconut > 0)
      expect(list.totalMinor).toBe(byBruteForce(wanted, needs, terms))
    }),
    { numRuns: 200 },
  )
})

test('a list one minor unit cheaper than the next is not passed over', () => {
  // By hand: South asks for 39.97. 3 packs of olive at 2.33 and 30 of coconut at 1.10 come to 39.99;
  // the next sum that its prices make is 40.00, 15 packs at 1.86 and 11 at 1.10.
  const step = (fromPacks: number, priceMinor: number) => ({ fromPacks, priceMinor })
  const offers = [
    offer('olive', 1, 'kg', [step(1, 100), step(2, 80)], NORTH),
    offer('olive', 4, 'kg', [step(2, 233), step(4, 186)], SOUTH),
    offer('coconut', 1, 'kg', [step(1, 655), step(2, 524)], NORTH),
    offer('coconut', 2, 'kg', 110, SOUTH),
  ]
  const needs = [
    { material: 'olive', need: 7 * KG },
    { material: 'coconut', need: 8 * KG },
  ]
  const list = buy(offers, needs, [
    { ...NORTH, leastOrderMinor: 1201 },
    { ...SOUTH, leastOrderMinor: 3997 },
  ])
  expect(list).toMatchObject({ totalMinor: 3999, proved: true })
})

const many = fc
  .record({
    materials: fc.integer({ min: 1, max: 8 }),
    seed: fc.array(
      fc.record({
        size: fc.integer({ min: 1, max: 30 }),
        priceMinor: fc.integer({ min: 200, max: 20_000 }),
        need: fc.integer({ min: 1, max: 200 }),
      }),
      { minLength: 24, maxLength: 24 },
    ),
    freightMinor: fc.integer({ min: 0, max: 3000 }),
    freeFromMinor: fc.integer({ min: 3000, max: 60_000 }),
  })
  .map(({ materials, seed, freightMinor, freeFromMinor }) => {
    const names = Array.from({ length: materials }, (_, at) => `material ${at}`)
    const offers = names.flatMap((name, at) =>
      seed
        .slice(at * 3, at * 3 + 3)
        .map(({ size, priceMinor }, i) =>
          offer(name, size, 'kg', priceMinor, { supplier: i === 0 ? 'North' : 'South' }),
        ),
    )
    const needs = names.map((material, at) => ({ material, need: (seed[at]?.need ?? 1) * KG }))
    const terms = [NORTH, SOUTH].map((one) => ({ ...one, freightMinor, freeFromMinor }))
    return { offers, needs, terms, freightMinor }
  })

test('a list covers every need, adds up, and is never dearer than buying each material by itself', () => {
  fc.assert(
    fc.property(many, ({ offers, needs, terms, freightMinor }) => {
      const list = buy(offers, needs, terms)
      for (const { packs, need } of list.lines)
        expect(
          covers(
            packs.reduce((sum, { amount }) => sum + amount, 0),
            need,
          ),
        ).toBe(true)
      expect(list.goodsMinor).toBe(list.lines.reduce((sum, { minor }) => sum + minor, 0))
      expect(list.totalMinor).toBe(list.goodsMinor + list.freightMinor)
      const apart = needs.map(({ material, need }) => {
        const own = supplies(offers.filter((one) => one.material === material))
        return cheapestCover(own, need)?.minor ?? NaN
      })
      const goods = apart.reduce((sum, minor) => sum + minor, 0)
      expect(list.goodsMinor).toBeGreaterThanOrEqual(goods)
      expect(list.totalMinor).toBeLessThanOrEqual(goods + 2 * freightMinor)
    }),
    { numRuns: 40 },
  )
})

test('without freight our own branch and bound and HiGHS buy for the same money', () => {
  fc.assert(
    fc.property(many, ({ offers, needs }) => {
      const apart = needs.map(({ material, need }) => {
        const cover = cheapestCover(
          supplies(offers.filter((one) => one.material === material)),
          need,
        )
        expect(cover?.proved).toBe(true)
        return cover?.minor
      })
      expect(buy(offers, needs).lines.map(({ minor }) => minor)).toEqual(apart)
    }),
    { numRuns: 40 },
  )
})
