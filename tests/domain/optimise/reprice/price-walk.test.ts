import fc from 'fast-check'
import { expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { COST } from '../../../../src/domain/blend/measure'
import { blendValue } from '../../../../src/domain/blend/values'
import { type Brief, pricesOf } from '../../../../src/domain/optimise/brief/brief'
import { withoutWishesOn } from '../../../../src/domain/optimise/brief/ranges'
import {
  bestCostAt,
  costOn,
  priceWalk,
  type PriceWalk,
} from '../../../../src/domain/optimise/reprice/price-walk'
import { withPrices } from '../../../../src/domain/optimise/brief/prices'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { anyBrief } from '../../../property/briefs'
import { highs } from '../../lp/solvers/loaded-highs'

/** Costs are sums of some tens of products, each kept to 1e-9 by the solvers. */
const SAME_COST = 1e-6

const cheapest = (brief: Brief): Brief => ({
  ...withoutWishesOn(brief, [COST]),
  goal: { minimise: COST },
})

function walked(brief: Brief, oil: string): PriceWalk | undefined {
  const walk = priceWalk(brief, library, { oil, fromChange: -0.5, toChange: 2 })
  return walk.status === 'found' ? walk : undefined
}

function highsCost(brief: Brief, oil: string, price: number): number {
  const answer = solveBrief(withPrices(brief, { [oil]: price }), library, highs)
  return answer.status === 'optimal' ? answer.goalValue : NaN
}

/** At a switch HiGHS finds the same cost as both blends; on either side, that of the blend there. */
function expectTrueSwitches(brief: Brief, oil: string, walk: PriceWalk): void {
  const close = (price: number, cost: number) => {
    const theirs = highsCost(brief, oil, price)
    expect(Math.abs(cost - theirs)).toBeLessThan(SAME_COST * Math.max(1, theirs))
  }
  walk.pieces.forEach((piece, index) => {
    close((piece.from + piece.to) / 2, costOn(piece, (piece.from + piece.to) / 2))
    close(piece.to, piece.costAtTo)
    const next = walk.pieces[index + 1]
    if (!next) return
    expect(next.from).toBe(piece.to)
    expect(Math.abs(next.costAtFrom - piece.costAtTo)).toBeLessThan(
      SAME_COST * Math.max(1, piece.costAtTo),
    )
    // The dearer the oil the less of it, and never one blend after another for nothing.
    expect(next.sharePercent).toBeLessThan(piece.sharePercent)
  })
}

test('switch prices stand up to HiGHS on both sides and at the switch, on random briefs', () => {
  let switches = 0
  fc.assert(
    fc.property(anyBrief, fc.nat(), (drawn, pick) => {
      const brief = cheapest(drawn)
      const oils = Object.keys(brief.oils)
      const oil = oils[pick % oils.length] ?? ''
      const walk = walked(brief, oil)
      if (!walk) {
        expect(solveBrief(brief, library, highs).status).toBe('infeasible')
        return
      }
      switches += walk.switches.length
      expectTrueSwitches(brief, oil, walk)
    }),
    { numRuns: 80, seed: 7 },
  )
  expect(switches).toBeGreaterThan(20)
})

test('under rules the switches stand up to HiGHS too', () => {
  let switches = 0
  fc.assert(
    fc.property(anyBrief, fc.nat(), (drawn, pick) => {
      const plain = { ...cheapest(drawn), robust: undefined }
      const oils = Object.keys(plain.oils).slice(0, 8)
      const brief: Brief = {
        ...plain,
        oils: Object.fromEntries(oils.map((oil) => [oil, plain.oils[oil] ?? {}])),
        groups: [],
        rules: { atMostOils: 3, absentOrAtLeast: 5 },
      }
      const oil = oils[pick % oils.length] ?? ''
      const walk = walked(brief, oil)
      if (!walk) return
      switches += walk.switches.length
      expectTrueSwitches(brief, oil, walk)
    }),
    { numRuns: 40, seed: 11 },
  )
  expect(switches).toBeGreaterThan(5)
})

test('two oils that may stand in for each other switch where their prices meet (by hand)', () => {
  const brief: Brief = {
    oils: { olive: { pricePerKg: 6 }, sunflower: { pricePerKg: 9 } },
    groups: [],
    measures: {},
    goal: { minimise: COST },
  }
  const walk = walked(brief, 'olive')
  expect(walk?.switches).toHaveLength(1)
  expect(walk?.switches[0]).toBeCloseTo(9, 9)
  expect(walk?.pieces.map(({ from, to, blend }) => [from, to, blend])).toEqual([
    [3, expect.closeTo(9, 9), { olive: 100 }],
    [expect.closeTo(9, 9), 18, { sunflower: 100 }],
  ])
  // Holding pure olive at 18 costs 18, and the best is sunflower at 9.
  expect(walk?.held).toMatchObject({ costAtFrom: 3, costAtTo: 18, blend: { olive: 100 } })
})

test('holding a formula never costs less than the best, and today the best formula costs the same', () => {
  fc.assert(
    fc.property(anyBrief, fc.nat(), (drawn, pick) => {
      const brief = cheapest(drawn)
      const oils = Object.keys(brief.oils)
      const walk = walked(brief, oils[pick % oils.length] ?? '')
      if (!walk) return
      for (let step = 0; step <= 20; step++) {
        const price = walk.held.from + (step / 20) * (walk.held.to - walk.held.from)
        expect(costOn(walk.held, price)).toBeGreaterThanOrEqual(bestCostAt(walk, price) - SAME_COST)
      }
      expect(costOn(walk.held, walk.price)).toBeCloseTo(bestCostAt(walk, walk.price), 6)
    }),
    { numRuns: 40 },
  )
})

test('the price above which cost passes its wish is where HiGHS finds no blend any more', () => {
  const brief: Brief = {
    oils: {
      coconut: { pricePerKg: 3.9, max: 30 },
      olive: { pricePerKg: 7.2, min: 20 },
      shea: { pricePerKg: 9.5 },
      castor: { pricePerKg: 8, max: 10 },
    },
    groups: [],
    measures: { hardness: { min: 34 }, lather: { min: 30, max: 42 }, cost: { max: 7.5 } },
    goal: { minimise: COST },
  }
  const walk = walked(brief, 'olive')
  const at = walk?.overWishAbove ?? NaN
  const status = (price: number) =>
    solveBrief(withPrices(brief, { olive: price }), library, highs).status
  expect(status(at - 0.001)).toBe('optimal')
  expect(status(at + 0.001)).toBe('infeasible')
})

test('a formula of the maker’s own is held at what its oils cost', () => {
  const brief: Brief = {
    oils: { olive: { pricePerKg: 6 }, coconut: { pricePerKg: 4 }, shea: { pricePerKg: 10 } },
    groups: [],
    measures: {},
    goal: { minimise: COST },
  }
  const hold = { olive: 50, shea: 50 }
  const walk = priceWalk(brief, library, { oil: 'olive', fromChange: 0, toChange: 1, hold })
  // By hand: half olive at 6 and half shea at 10 are 8; at 12 they are 11.
  expect(walk).toMatchObject({ held: { costAtFrom: 8, costAtTo: 11, sharePercent: 50 } })
  expect(blendValue(library, pricesOf(brief), COST, hold)).toBe(8)
})

test('a walk that cannot be made says why', () => {
  const brief: Brief = {
    oils: { olive: { pricePerKg: 6 }, coconut: {} },
    groups: [],
    measures: { cost: { min: 5 } },
    goal: { maximise: 'mildness' },
  }
  const refused = priceWalk(brief, library, { oil: 'olive', fromChange: -0.5, toChange: 2 })
  expect(refused).toMatchObject({ status: 'invalid' })
  const paths = refused.status === 'invalid' ? refused.problems.map(({ path }) => path) : []
  expect(paths).toEqual(['oils.coconut.pricePerKg', 'goal', 'measures.cost.min'])
  const sound: Brief = {
    ...brief,
    oils: { olive: { pricePerKg: 0 } },
    measures: {},
    goal: { minimise: COST },
  }
  expect(priceWalk(sound, library, { oil: 'olive', fromChange: 2, toChange: 1 })).toMatchObject({
    problems: [{ path: 'oils.olive.pricePerKg' }, { path: 'from' }],
  })
  expect(priceWalk(sound, library, { oil: 'palm', fromChange: 0, toChange: 1 })).toMatchObject({
    problems: [{ path: 'oil', message: '"palm" is not on the shelf. Name one of olive.' }],
  })
})
