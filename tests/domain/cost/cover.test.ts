import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cheapestCover, covers } from '../../../src/domain/cost/cover'
import type { Offer } from '../../../src/domain/cost/offer'
import { orderMinor } from '../../../src/domain/cost/offer'
import type { Supply } from '../../../src/domain/cost/supply'
import { KG, offer, supplies } from './books'

test('the cheapest packs for 23 kg are four of 5 kg and three of 1 kg', () => {
  // By hand, 5 kg at 20.00 and 1 kg at 4.80: 5 × 20.00 = 100.00; 4 × 20.00 + 3 × 4.80 = 94.40;
  // 3 × 20.00 + 8 × 4.80 = 98.40.
  const cover = cheapestCover(
    supplies([offer('olive', 5, 'kg', 2000), offer('olive', 1, 'kg', 480)]),
    23 * KG,
  )
  expect(cover).toMatchObject({ minor: 9440, amount: 23 * KG, proved: true })
  expect(cover?.bought.map(({ packs }) => packs)).toEqual([4, 3])
})

test('more packs are bought where a price step makes them cheaper', () => {
  // By hand: 9 × 10.00 = 90.00, but from 10 on 8.50 each: 10 × 8.50 = 85.00.
  const steps = [
    { fromPacks: 1, priceMinor: 1000 },
    { fromPacks: 10, priceMinor: 850 },
  ]
  const cover = cheapestCover(supplies([offer('shea', 1, 'kg', steps)]), 9 * KG)
  expect(cover).toMatchObject({ minor: 8500, amount: 10 * KG })
})

test('no fewer packs are bought than the supplier sells', () => {
  const cover = cheapestCover(
    supplies([offer('shea', 1, 'kg', [{ fromPacks: 6, priceMinor: 700 }])]),
    2 * KG,
  )
  expect(cover?.bought.map(({ packs }) => packs)).toEqual([6])
})

test('a need that packs hold exactly, but for noise of floating point, takes no pack more', () => {
  // 3 packs of 5 l at 0.913 kg/l, reckoned in another order.
  const [supply] = supplies([offer('olive', 1, 'kg', 500)])
  if (!supply) throw new Error('No supply')
  const amount = 5 * 1000 * 0.913
  const cover = cheapestCover([{ ...supply, amount }], 3 * 0.913 * 5000 + 1e-9)
  expect(cover?.bought[0]?.packs).toBe(3)
})

test('nothing is bought for no need', () => {
  expect(cheapestCover(supplies([offer('olive', 5, 'kg', 2000)]), 0)).toMatchObject({
    minor: 0,
    bought: [],
  })
})

const packs: fc.Arbitrary<Offer> = fc
  .record({
    size: fc.integer({ min: 1, max: 12 }),
    priceMinor: fc.integer({ min: 100, max: 5000 }),
    least: fc.integer({ min: 1, max: 3 }),
    step: fc.option(
      fc.record({
        more: fc.integer({ min: 1, max: 5 }),
        part: fc.double({ min: 0.6, max: 1, noNaN: true }),
      }),
    ),
  })
  .map(({ size, priceMinor, least, step }) =>
    offer('olive', size, 'kg', [
      { fromPacks: least, priceMinor },
      ...(step
        ? [{ fromPacks: least + step.more, priceMinor: Math.round(priceMinor * step.part) }]
        : []),
    ]),
  )
const someOffers = fc
  .uniqueArray(packs, { minLength: 1, maxLength: 4, selector: ({ size }) => size })
  .map((offers) => supplies(offers))

/** The least money of all numbers of packs up to a few more than cover the need or reach a step. */
function byBruteForce(choice: readonly Supply[], need: number): number {
  const [first, ...rest] = choice
  if (!first) return covers(0, need) ? 0 : Infinity
  const most = Math.max(
    Math.ceil(need / first.amount),
    ...first.steps.map(({ fromPacks }) => fromPacks),
  )
  return Math.min(
    ...Array.from({ length: most + 1 }, (_, count) => {
      const minor = count === 0 ? 0 : orderMinor(first.steps, count)
      if (minor === undefined) return Infinity
      const left = need - count * first.amount
      return minor + (left <= 1e-6 ? 0 : byBruteForce(rest, left))
    }),
  )
}

test('the packs found are the cheapest of all there are, by brute force', () => {
  fc.assert(
    fc.property(someOffers, fc.integer({ min: 1, max: 40 }), (choice, kg) => {
      const cover = cheapestCover(choice, kg * KG)
      expect(cover?.proved).toBe(true)
      expect(cover?.minor).toBe(byBruteForce(choice, kg * KG))
    }),
    { numRuns: 150 },
  )
})

test('packs cover the need, add up, and are never dearer than whole packs of any one offer', () => {
  fc.assert(
    fc.property(someOffers, fc.double({ min: 0.1, max: 500, noNaN: true }), (choice, kg) => {
      const cover = cheapestCover(choice, kg * KG)
      if (!cover) throw new Error('There are offers')
      expect(covers(cover.amount, kg * KG)).toBe(true)
      expect(cover.minor).toBe(
        cover.bought.reduce(
          (sum, { supply, packs: count }) => sum + (orderMinor(supply.steps, count) ?? NaN),
          0,
        ),
      )
      for (const { amount, steps } of choice) {
        const count = Math.max(Math.ceil((kg * KG) / amount), steps[0]?.fromPacks ?? 1)
        expect(cover.minor).toBeLessThanOrEqual(orderMinor(steps, count) ?? NaN)
      }
    }),
    { numRuns: 150 },
  )
})
