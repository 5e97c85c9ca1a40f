import { expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { COST } from '../../../../src/domain/blend/measure'
import { type Brief, pricesOf } from '../../../../src/domain/optimise/brief/brief'
import {
  pricesTogether,
  type Together,
  type TogetherOrder,
} from '../../../../src/domain/optimise/reprice/together'
import { withPrices } from '../../../../src/domain/optimise/brief/prices'
import { yearlyLogSpread } from '../../../../src/domain/cost/price-spread'
import { drawPrices } from '../../../../src/domain/optimise/reprice/price-draws'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { highs } from '../../lp/solvers/loaded-highs'

const BRIEF: Brief = {
  oils: {
    coconut: { pricePerKg: 3.9, max: 30 },
    'palm-kernel': { pricePerKg: 3.6, max: 30 },
    olive: { pricePerKg: 7.2, min: 20 },
    shea: { pricePerKg: 9.5 },
    palm: { pricePerKg: 3.1, max: 40 },
    castor: { pricePerKg: 8, max: 10 },
  },
  groups: [],
  measures: { hardness: { min: 34 }, lather: { min: 30, max: 42 } },
  goal: { minimise: COST },
}
const ORDER: TogetherOrder = {
  spreads: { coconut: 0.3, 'palm-kernel': 0.3, olive: 0.35, palm: 0.25, shea: 0.2 },
  months: 12,
  correlation: 0.3,
  count: 300,
  seed: 5,
}

function found(brief: Brief, order: TogetherOrder): Together {
  const answer = pricesTogether(brief, library, order)
  if (answer.status !== 'found') throw new Error(`No answer but ${JSON.stringify(answer)}`)
  return answer
}

test('the same seed gives the same answer to the last figure, and another seed another', () => {
  const one = found(BRIEF, ORDER)
  expect(found(BRIEF, ORDER)).toEqual(one)
  expect(found(BRIEF, { ...ORDER, seed: 6 })).not.toEqual(one)
})

test('who wins each draw is who HiGHS finds cheapest under its prices', () => {
  const { winners, draws } = found(BRIEF, { ...ORDER, count: 60 })
  expect(winners.reduce((sum, { wins }) => sum + wins, 0)).toBe(draws)
  const cheapestOf = [...drawPrices(pricesOf(BRIEF), { ...ORDER, count: 60 })].map((prices) => {
    const answer = solveBrief(withPrices(BRIEF, prices), library, highs)
    return answer.status === 'optimal' ? answer.blend : {}
  })
  for (const { blend, wins } of winners) {
    const same = cheapestOf.filter((other) =>
      Object.keys(BRIEF.oils).every(
        (oil) => Math.abs((other[oil] ?? 0) - (blend[oil] ?? 0)) < 1e-4,
      ),
    )
    expect(same).toHaveLength(wins)
  }
})

test('two oils of one price and spread win half of the draws each, within four standard errors', () => {
  const brief: Brief = {
    oils: { olive: { pricePerKg: 5 }, sunflower: { pricePerKg: 5 } },
    groups: [],
    measures: {},
    goal: { minimise: COST },
  }
  const count = 4_000
  const { winners } = found(brief, { ...ORDER, spreads: { olive: 0.2, sunflower: 0.2 }, count })
  const standardError = Math.sqrt(0.25 / count)
  for (const { winsFraction } of winners)
    expect(Math.abs(winsFraction - 0.5)).toBeLessThan(4 * standardError)
  expect(winners).toHaveLength(2)
})

test('drawn prices have today’s as their median, the spread asked for and the correlation asked for', () => {
  const moves = {
    spreads: { olive: 0.4, palm: 0.2 },
    months: 6,
    correlation: 0.5,
    count: 20_000,
    seed: 1,
  }
  const logs = [...drawPrices({ olive: 8, palm: 3 }, moves)].map(
    ({ olive = NaN, palm = NaN }) => [Math.log(olive / 8), Math.log(palm / 3)] as const,
  )
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length
  const spread = (values: readonly number[]) => Math.sqrt(mean(values.map((value) => value ** 2)))
  const [olive, palm] = [logs.map(([one]) => one), logs.map(([, other]) => other)]
  // Half a year: the yearly spread by the root of a half. Standard errors are under 1 % here.
  expect(mean(olive)).toBeCloseTo(0, 1)
  expect(spread(olive) / (0.4 * Math.SQRT1_2)).toBeCloseTo(1, 1)
  expect(spread(palm) / (0.2 * Math.SQRT1_2)).toBeCloseTo(1, 1)
  const together = mean(logs.map(([a, b]) => a * b)) / (spread(olive) * spread(palm))
  expect(together).toBeCloseTo(0.5, 1)
})

test('with all prices still, the formula in use always wins and costs nothing more', () => {
  const still = found(BRIEF, { ...ORDER, spreads: { olive: 0 }, count: 5 })
  expect(still.held.winsFraction).toBe(1)
  expect(still.meanExtra).toBe(0)
  expect(still.winners).toHaveLength(1)
})

test('holding never costs less than the best, in every quantile', () => {
  const { best, holding, extra } = found(BRIEF, ORDER)
  best.forEach(({ value }, index) =>
    expect(holding[index]?.value).toBeGreaterThanOrEqual(value - 1e-9),
  )
  for (const { value } of extra) expect(value).toBeGreaterThanOrEqual(0)
})

test('a most for cost is told of by how often it is passed', () => {
  const wish = (max: number): Brief => ({
    ...BRIEF,
    measures: { ...BRIEF.measures, cost: { max } },
  })
  expect(found(BRIEF, ORDER).overWishFraction).toBeNull()
  expect(found(wish(1_000), ORDER).overWishFraction).toBe(0)
  const median = found(BRIEF, ORDER).best.find(({ part }) => part === 0.5)?.value ?? NaN
  expect(found(wish(median), { ...ORDER, hold: { olive: 100 } }).overWishFraction).toBeCloseTo(
    0.5,
    2,
  )
})

test('rules are kept in every draw', () => {
  const { winners } = found({ ...BRIEF, rules: { atMostOils: 3 } }, { ...ORDER, count: 40 })
  for (const { blend } of winners) expect(Object.keys(blend).length).toBeLessThanOrEqual(3)
})

test('what cannot be drawn is told by path', () => {
  const bad: TogetherOrder = {
    spreads: { dragon: 0.2, olive: -1 },
    months: 500,
    correlation: 2,
    count: 0.5,
    seed: 1,
    hold: { babassu: 100 },
  }
  const answer = pricesTogether(BRIEF, library, bad)
  expect(answer).toMatchObject({ status: 'invalid' })
  const paths = answer.status === 'invalid' ? answer.problems.map(({ path }) => path) : []
  expect(paths).toEqual([
    'spreads.dragon',
    'spreads.olive',
    'months',
    'correlation',
    'count',
    'count',
    'hold.babassu',
  ])
})

test('the yearly spread of a price is the root of its squared log changes over the years (by hand)', () => {
  // ln(11/10) = 0.0953, ln(9.9/11) = -0.1054: squares 0.00908 and 0.01110 over 2 years of 365.25 days.
  const history = [
    { on: '2024-01-01', pricePerKg: 10 },
    { on: '2025-12-31', pricePerKg: 9.9 },
    { on: '2025-01-01', pricePerKg: 11 },
  ]
  const years = 730 / 365.25
  const byHand = Math.sqrt((Math.log(1.1) ** 2 + Math.log(0.9) ** 2) / years)
  expect(byHand).toBeCloseTo(0.1005, 3)
  expect(yearlyLogSpread([history])).toBeCloseTo(byHand, 12)
  expect(yearlyLogSpread([history.slice(0, 2)])).toBeUndefined()
  expect(yearlyLogSpread([])).toBeUndefined()
  // Two packs of one oil: their squares and their years are put together.
  expect(yearlyLogSpread([history, history])).toBeCloseTo(byHand, 12)
})
