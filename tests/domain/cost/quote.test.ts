import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkQuote } from '../../../src/domain/cost/check-quote'
import { aimedPrice, upToPoint } from '../../../src/domain/cost/price-points'
import { type Quote, type QuoteChoices, quoteOf } from '../../../src/domain/cost/quote'
import { bookOf, offer } from './books'
import { COSTS, PRICING, roundPlan } from './round-plan'

const CHOICES: QuoteChoices = {
  quantities: [53, 106, 500],
  aim: { margin: 40 },
  points: { stepMinor: 5 },
  orderMinor: 1500,
  surplus: 'stock',
  taxPercent: 20,
  retail: { aim: { margin: 45 }, points: { stepMinor: 50, lessMinor: 5 } },
  leastBars: 24,
  batchesPerWeek: 2,
  packingDays: 2,
  quotedOn: '2026-11-25',
  validDays: 30,
}

function quote(change: Partial<QuoteChoices> = {}): Quote {
  const answer = quoteOf(roundPlan(), COSTS, { ...CHOICES, ...change }, PRICING)
  if (answer.status !== 'ready') throw new Error(answer.reasons.join())
  return answer.quote
}

test('a quote for 53 bars is worked by hand to the penny', () => {
  const [tier] = quote().tiers
  // One batch costs 99.84 and gives 53.2 bars: 53 of them 99.84 × 53 / 53.2 = 99.46466, with 15.00 for the
  // order 114.46466, so 114.46; 2.159622 a bar.
  expect(tier).toMatchObject({ quantity: 53, batches: 1, surplusBars: 0, costMinor: 11_446 })
  expect(tier?.costPerBar).toBeCloseTo(215.9623, 4)
  // 2.159623 / 0.60 = 3.599371, up to the next 0.05: 3.60. × 53 = 190.80, tax 38.16, 228.96.
  expect(tier).toMatchObject({
    priceMinor: 360,
    netMinor: 19_080,
    taxMinor: 3816,
    grossMinor: 22_896,
  })
  // 1 − 114.46 / 190.80 = 40.0105 %; 190.80 / 114.46 − 1 = 66.6958 %.
  expect(tier?.marginPercent).toBeCloseTo(40.0105, 4)
  expect(tier?.markupPercent).toBeCloseTo(66.6958, 4)
  // 3.60 / 0.55 × 1.2 = 7.854545, up to the next .45 or .95: 7.95; the shop keeps 1 − 3.60 / 6.625 = 45.6604 %.
  expect(tier?.retailMinor).toBe(795)
  expect(tier?.shopMarginPercent).toBeCloseTo(45.6604, 4)
})

test('a quote rests on packs that must be bought, whatever the cost of a bar rests on', () => {
  const [drum] = [offer('olive', 25, 'kg', 10_000)]
  const pricing = { ...PRICING, book: bookOf([drum, ...PRICING.book.offers.slice(1)]) }
  const costOf = (charge: 'proRata' | 'boughtLessLeftovers' | 'allBought') => {
    const answer = quoteOf(roundPlan(), { ...COSTS, charge }, CHOICES, pricing)
    return answer.status === 'ready' ? answer.quote.tiers[0]?.costMinor : undefined
  }
  // Leftovers at the price paid: of one drum as much as by the kilogram. All of it: 21.5 kg more, 86.00.
  expect(costOf('proRata')).toBe(costOf('boughtLessLeftovers'))
  expect(costOf('allBought')).toBeGreaterThan((costOf('proRata') ?? 0) + 8000)
})

test('lead time is delivery, making, cure and packing', () => {
  const [small, , large] = quote().tiers
  const cure = roundPlan().cure?.days ?? NaN
  // 1 batch at 2 a week: 3.5, so 4 days; 500 bars are 9.4, so 10 batches: 35 days. Packing 2.
  expect(small?.leadDays).toBe(4 + cure + 2)
  expect(large).toMatchObject({ batches: 10, leadDays: 35 + cure + 2 })
  // 2026-11-25 and 42 + 6 = 48 days: 5 in November, 31 in December, 12 in January.
  expect(cure).toBe(42)
  expect(small?.readyOn).toBe('2027-01-12')
  const slow = {
    ...PRICING,
    book: { ...PRICING.book, suppliers: [{ supplier: 'Harbour Oils', deliveryDays: 9 }] },
  }
  const answer = quoteOf(roundPlan(), COSTS, CHOICES, slow)
  expect(answer.status === 'ready' && answer.quote.tiers[0]?.leadDays).toBe(9 + 4 + cure + 2)
})

test('validity is counted from the day of the quote', () => {
  // 5 days in November, 25 in December.
  expect(quote().validUntil).toBe('2026-12-25')
})

test('bars beyond the order go to stock, or the order pays for them', () => {
  const costs = (surplus: 'stock' | 'charged') =>
    quote({ surplus, quantities: [60], orderMinor: 0 }).tiers[0]?.costMinor
  // Two batches, 106.4 bars: by hand 49.70 + 12.60 + 5.46 + 96.66 + 22.50 + 12.77 = 199.69;
  // × 60 / 106.4 = 112.6071, so 112.61.
  expect(costs('charged')).toBe(19_969)
  expect(costs('stock')).toBe(11_261)
})

test('below the break-even a price loses money, and from it to the quantity it never does', () => {
  const { tiers, minimumRun } = quote({ quantities: [53] })
  const [tier] = tiers
  // 3.60 a bar against 99.84 / 53.2 = 1.876692 and 15.00 an order: 15.00 / 1.723308 = 8.7, so 9 bars.
  expect(tier?.breakEven).toBe(9)
  // With a margin of 40 %: 3.60 × 0.6 = 2.16; 15.00 / (2.16 − 1.876692) = 52.9, so 53 bars.
  expect(tier?.aimKeptFrom).toBe(53)
  expect(minimumRun).toBe(53)
})

test('the maker’s own least order goes before a smaller run that would pay', () => {
  expect(quote({ orderMinor: 0, leastBars: 24 }).minimumRun).toBe(24)
})

test('margin and markup are two ways to say the same', () => {
  // 40 % of the price is 2/3 on the cost.
  expect(aimedPrice(300, { margin: 40 })).toBeCloseTo(500, 9)
  expect(aimedPrice(300, { markup: 200 / 3 })).toBeCloseTo(500, 9)
})

test.each([
  [359.9, { stepMinor: 5 }, 360],
  [360, { stepMinor: 5 }, 360],
  [360.1, { stepMinor: 5 }, 365],
  [495, { stepMinor: 100, lessMinor: 5 }, 495],
  [495.2, { stepMinor: 100, lessMinor: 5 }, 595],
  [0, { stepMinor: 100, lessMinor: 1 }, 99],
  [123.000_000_000_01, { stepMinor: 1 }, 123],
])('a price of %d goes up to the point %o at %d', (price, points, asked) => {
  expect(upToPoint(price, points)).toBe(asked)
})

test('no price is below its aim, tiers add up, and dearer materials never make one cheaper', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 80 }),
      fc.integer({ min: 1, max: 100 }),
      fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 4 }),
      fc.integer({ min: 0, max: 4000 }),
      (margin, stepMinor, quantities, more) => {
        const change = { aim: { margin }, points: { stepMinor }, quantities }
        const now = quote(change)
        const dearer = quoteOf(
          roundPlan(),
          COSTS,
          { ...CHOICES, ...change },
          {
            ...PRICING,
            book: bookOf(
              [...PRICING.book.offers.slice(1), offer('olive', 5, 'kg', 3550 + more)],
              PRICING.book,
            ),
          },
        )
        for (const [at, tier] of now.tiers.entries()) {
          expect(tier.priceMinor % stepMinor).toBe(0)
          expect(tier.marginPercent).toBeGreaterThanOrEqual(margin - 1e-9)
          expect(tier.grossMinor).toBe(tier.netMinor + tier.taxMinor)
          expect(tier.breakEven).toBeLessThanOrEqual(tier.aimKeptFrom ?? 0)
          const other = dearer.status === 'ready' ? dearer.quote.tiers[at]?.costMinor : undefined
          expect(other).toBeGreaterThanOrEqual(tier.costMinor)
        }
      },
    ),
    { numRuns: 30 },
  )
})

describe('what is refused or told', () => {
  test('a quote without a price of something is refused', () => {
    const bare = { ...PRICING, book: bookOf(PRICING.book.offers.slice(1)) }
    expect(quoteOf(roundPlan(), COSTS, CHOICES, bare)).toEqual({
      status: 'refused',
      reasons: ['olive has no price. Add a pack to the price book.'],
    })
  })

  test('an order that would take for ever is refused', () => {
    const answer = quoteOf(roundPlan(), COSTS, { ...CHOICES, quantities: [1e9] }, PRICING)
    expect(answer.status === 'refused' && answer.reasons[0]).toMatch(/more than 400 batches/u)
  })

  test('prices that age are told by name', () => {
    const offers = PRICING.book.offers.map((one) =>
      one.material === 'olive' ? { ...one, on: '2026-05-25' } : one,
    )
    const answer = quoteOf(roundPlan(), COSTS, CHOICES, { ...PRICING, book: bookOf(offers) })
    // By hand: 6 + 30 + 31 + 31 + 30 + 31 + 25 = 184 days.
    expect(answer.status === 'ready' && answer.quote.notes).toEqual([
      'The price of olive is 184 days old. Ask Harbour Oils anew.',
    ])
  })

  test('choices that make no sense are told by path', () => {
    const wrong: QuoteChoices = {
      ...CHOICES,
      quantities: [0, 2.5],
      aim: { margin: 100 },
      points: { stepMinor: 5, lessMinor: 5 },
      batchesPerWeek: 0,
      quotedOn: 'soon',
    }
    expect(checkQuote(wrong, 'quote').map(({ path }) => path)).toEqual([
      'quote.quantities[0]',
      'quote.quantities[1]',
      'quote.aim.margin',
      'quote.points.lessMinor',
      'quote.batchesPerWeek',
      'quote.quotedOn',
    ])
    expect(checkQuote(CHOICES, 'quote')).toEqual([])
  })
})
