import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkCostChoices } from '../../../src/domain/cost/check-choices'
import { type CostChoices, runCost } from '../../../src/domain/cost/run-cost'
import { type CostUnit, waterfallOf } from '../../../src/domain/cost/waterfall'
import { bookOf } from './books'
import { COSTS, OFFERS, PRICING, roundPlan } from './round-plan'

function costOf(change: Partial<CostChoices> = {}, batches = 1) {
  const answer = runCost(roundPlan(), { ...COSTS, ...change }, PRICING, batches)
  if (answer.status !== 'ready') throw new Error(answer.message)
  return answer.cost
}

test('a batch costs 99.84, worked by hand to the penny', () => {
  const lines = costOf().lines.map(({ id, minor }) => [id, minor])
  expect(lines).toEqual([
    // 3.5 kg × 35.50 / 5 = 24.85
    ['olive', 2485],
    // 1.5 kg × 4.20 = 6.30
    ['coconut', 630],
    // 0.7 kg × 3.90 = 2.73
    ['naoh', 273],
    // 95 + 56 × 1.5 = 179 minutes at 16.20 an hour = 48.33
    ['labour', 4833],
    // 2.50 + 140.00 / 16 = 11.25
    ['overhead', 1125],
    // 56 × 0.95 = 53.2 bars × 0.12 = 6.384, so 6.38
    ['carton', 638],
  ])
  const { totalMinor, perBar, perKg, perBatch } = costOf()
  // 24.85 + 6.30 + 2.73 + 48.33 + 11.25 + 6.38 = 99.84
  expect(totalMinor).toBe(9984)
  expect(perBatch).toBe(9984)
  // 99.84 / 53.2 = 1.876691…; / 0.109375 kg = 17.15832…
  expect(perBar).toBeCloseTo(187.66917, 5)
  expect(perKg).toBeCloseTo(1715.83241, 4)
})

test('what must be bought is charged, all of it or less what is left over', () => {
  const minorOf = (id: string, change: Partial<CostChoices>) =>
    costOf(change).lines.find((line) => line.id === id)?.minor
  // Olive, one pack: 35.50, of which 1.5 of 5 kg is left: 35.50 × 1.5 / 5 = 10.65; 24.85 stays.
  expect(minorOf('olive', { charge: 'allBought' })).toBe(3550)
  expect(minorOf('olive', { charge: 'boughtLessLeftovers' })).toBe(2485)
  // Cartons, one pack of a hundred.
  expect(minorOf('carton', { charge: 'allBought' })).toBe(1200)
})

test('a run of batches buys for all of them at once', () => {
  const { lines, yield: run } = costOf({ charge: 'allBought' }, 3)
  // By hand: 10.5 kg of olive are three packs of 5 kg, 106.50; 4.5 kg of coconut five of 1 kg, 21.00.
  expect(lines.slice(0, 2).map(({ minor }) => minor)).toEqual([10650, 2100])
  expect(run).toMatchObject({ batches: 3, cutBars: 168 })
})

test('waste makes weighed materials dearer, and cartons not', () => {
  const wasted = costOf({ wastePercent: 4 }).lines
  // By hand: 24.85 / 0.96 = 25.885…, 6.30 / 0.96 = 6.5625, both rounded.
  expect(wasted.slice(0, 2).map(({ minor }) => minor)).toEqual([2589, 656])
  expect(wasted.find(({ id }) => id === 'carton')?.minor).toBe(638)
})

test('what has no price is named and left out', () => {
  const bare = { ...PRICING, book: bookOf(OFFERS.slice(1)) }
  const answer = runCost(roundPlan(), COSTS, bare, 1)
  if (answer.status !== 'ready') throw new Error(answer.message)
  expect(answer.cost.missing).toEqual([
    { material: 'olive', message: 'olive has no price. Add a pack to the price book.' },
  ])
  // 99.84 − 24.85
  expect(answer.cost.totalMinor).toBe(7499)
})

test('a batch that is not cut has no cost of a bar, and says so', () => {
  const answer = runCost({ ...roundPlan(), bars: null }, COSTS, PRICING, 1)
  expect(answer).toEqual({
    status: 'no bars',
    message: 'The batch is not cut into bars. Give the weight of a bar, or how it is cut.',
  })
})

test('the steps of a bar are worked by hand', () => {
  const { steps } = waterfallOf(costOf(), 'bar')
  const of = (what: string) => steps.find((step) => step.what === what)?.value
  // 7200 / 125 = 57.6 bars poured. Oils 31.15 / 57.6 = 0.540799; labour 48.33 / 57.6 = 0.8390625.
  expect(of('oils')).toBeCloseTo(54.0799, 4)
  expect(of('labour')).toBeCloseTo(83.90625, 6)
  // Without cartons 93.46: / 56 − / 57.6 = 0.046359; × 2.8 / (53.2 × 56) = 0.0878383.
  expect(of('trimmings')).toBeCloseTo(4.6359, 4)
  expect(of('rejects')).toBeCloseTo(8.78383, 4)
  expect(of('packaging')).toBeCloseTo(11.9925, 4)
})

test('steps add up to the cost of a bar, a batch and a kg, whatever is lost', () => {
  fc.assert(
    fc.property(
      fc.record({
        wastePercent: fc.integer({ min: 0, max: 40 }),
        rejectPercent: fc.integer({ min: 0, max: 90 }),
        minutesPerBar: fc.integer({ min: 0, max: 9 }),
        overheadMinorPerMonth: fc.integer({ min: 0, max: 99_999 }),
        charge: fc.constantFrom(
          'proRata' as const,
          'allBought' as const,
          'boughtLessLeftovers' as const,
        ),
      }),
      fc.integer({ min: 1, max: 20 }),
      (change, batches) => {
        const cost = costOf(change, batches)
        const totals: Record<CostUnit, number> = {
          bar: cost.perBar,
          batch: cost.perBatch,
          kg: cost.perKg,
        }
        for (const unit of ['bar', 'batch', 'kg'] as const) {
          const { total, steps } = waterfallOf(cost, unit)
          expect(total / totals[unit]).toBeCloseTo(1, 6)
          expect(steps.every(({ value }) => value > 0)).toBe(true)
        }
        expect(cost.totalMinor).toBe(cost.lines.reduce((sum, { minor }) => sum + minor, 0))
      },
    ),
    { numRuns: 60 },
  )
})

test('what can’t be reckoned with is told by path', () => {
  const wrong = { ...COSTS, rejectPercent: 100, minutesPerBar: -1, batchesPerMonth: 0 }
  expect(checkCostChoices(wrong, 'work').map(({ path }) => path)).toEqual([
    'work.minutesPerBar',
    'work.rejectPercent',
    'work.batchesPerMonth',
  ])
  expect(checkCostChoices(COSTS, 'work')).toEqual([])
})
