import fc from 'fast-check'
import { expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { COST } from '../../../../src/domain/blend/measure'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { withoutWishesOn } from '../../../../src/domain/optimise/brief/ranges'
import { withPrices } from '../../../../src/domain/optimise/brief/prices'
import { PriceSolver } from '../../../../src/domain/optimise/reprice/price-solver'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { anyBrief } from '../../../property/briefs'
import { highs } from '../../lp/solvers/loaded-highs'

/** The solvers keep rows to 1e-9 of their figures; goals are sums of some tens of them. */
const SAME_GOAL = 1e-6

const freeOfCost = (brief: Brief): Brief => withoutWishesOn(brief, [COST])

const cents = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 63, maxLength: 63 })

/** Prices in steps of half a unit, so that ties are common. */
function pricesFor(brief: Brief, halves: readonly number[]): Record<string, number> {
  return Object.fromEntries(
    Object.keys(brief.oils).map((oil, place) => [oil, (halves[place] ?? 1) / 2]),
  )
}

test('an answer is the same to the last bit whatever was asked before', () => {
  fc.assert(
    fc.property(anyBrief, fc.array(cents, { minLength: 2, maxLength: 6 }), (drawn, draws) => {
      const brief = freeOfCost(drawn)
      const asked = draws.map((halves) => pricesFor(brief, halves))
      const kept = new PriceSolver(brief, library)
      const forwards = asked.map((prices) => JSON.stringify(kept.solve(prices)))
      const backwards = asked.toReversed().map((prices) => JSON.stringify(kept.solve(prices)))
      const alone = asked.map((prices) =>
        JSON.stringify(new PriceSolver(brief, library).solve(prices)),
      )
      expect(forwards).toEqual(alone)
      expect(backwards.toReversed()).toEqual(alone)
    }),
    { numRuns: 60 },
  )
})

test('under other prices the goal is that of HiGHS on the brief with these prices', () => {
  fc.assert(
    fc.property(anyBrief, cents, (brief, halves) => {
      const prices = pricesFor(brief, halves)
      const ours = new PriceSolver(brief, library).solve(prices)
      const theirs = solveBrief(withPrices(brief, prices), library, highs)
      expect(ours.status).toBe(theirs.status)
      if (ours.status !== 'optimal' || theirs.status !== 'optimal') return
      const size = Math.max(1, Math.abs(theirs.goalValue))
      expect(Math.abs(ours.goalValue - theirs.goalValue)).toBeLessThan(SAME_GOAL * size)
      expect(ours.measures[COST]).toBeCloseTo(
        Object.entries(ours.blend).reduce(
          (sum, [oil, share]) => sum + (share / 100) * (prices[oil] ?? NaN),
          0,
        ),
        9,
      )
    }),
    { numRuns: 60 },
  )
})

test('a brief that lacks a price is invalid until one is given', () => {
  const brief: Brief = {
    oils: { olive: {}, coconut: { pricePerKg: 4 } },
    groups: [],
    measures: {},
    goal: { minimise: COST },
  }
  const solver = new PriceSolver(brief, library)
  expect(solver.solve({})).toMatchObject({
    status: 'invalid',
    problems: [{ path: 'oils.olive.pricePerKg' }],
  })
  expect(solver.solve({ olive: 3, palm: 1 })).toMatchObject({
    status: 'optimal',
    blend: { olive: 100 },
  })
  expect(solver.solve({ olive: 5 })).toMatchObject({ status: 'optimal', blend: { coconut: 100 } })
})
