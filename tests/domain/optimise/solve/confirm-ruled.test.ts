import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { confirm } from '../../../../src/domain/optimise/solve/confirm'
import type { Found } from '../../../../src/domain/optimise/brief/answer'
import { solveWithJslp } from '../../../../src/domain/lp/solvers/jslp'
import { highs } from '../../lp/solvers/loaded-highs'
import { solved } from '../search/agreement'
import { ruledBriefs } from '../search/ruled-briefs'

/** By hand: of at most two oils the cheapest is 40 % palm in olive, 0.4 · 3 + 0.6 · 5 = 4.20. */
const BRIEF: Brief = {
  oils: {
    palm: { pricePerKg: 3, max: 40 },
    olive: { pricePerKg: 5 },
    lard: { pricePerKg: 4, max: 30 },
  },
  groups: [],
  measures: {},
  goal: { minimise: 'cost' },
  rules: { atMostOils: 2 },
}
const found = (goalValue: number): Found => ({
  blend: { palm: 40, olive: 60 },
  measures: {},
  goalValue,
})
const JSLP = 'javascript-lp-solver'
const ask = (goalValue: number, more = {}, budget = {}, brief = BRIEF) =>
  confirm(brief, { ...found(goalValue), ...more }, library, solveWithJslp, JSLP, budget)

describe('a second solver under rules', () => {
  test('confirms the best, and not the best without the rules', () => {
    expect(ask(4.2)).toEqual({ status: 'confirmed', by: JSLP })
    expect(ask(3.9)).toEqual({
      status: 'differs',
      by: JSLP,
      ours: 3.9,
      theirs: expect.closeTo(4.2, 9) as number,
    })
  })

  test('differs where it finds better than what was called the best', () => {
    expect(ask(4.5)).toMatchObject({ status: 'differs', ours: 4.5 })
  })

  test('differs where it proves that no blend keeps the rules', () => {
    const none = { ...BRIEF, oils: { ...BRIEF.oils, olive: { pricePerKg: 5, max: 50 } } }
    expect(ask(4.2, {}, {}, none)).toEqual({ status: 'differs', by: JSLP, ours: 4.2, theirs: null })
  })

  test('leaves open what time did not suffice for on either side', () => {
    const unproved = { bound: 4, gap: 0.5, relativeGap: 0.1 }
    expect(ask(4.5, unproved)).toMatchObject({ status: 'open', ours: 4.5 })
    expect(ask(4.2, {}, { nodes: 1 })).toEqual({
      status: 'open',
      by: JSLP,
      ours: 4.2,
      theirs: null,
    })
  })

  test('differs where it finds better than a bound that was called proved', () => {
    const wrong = { bound: 4.4, gap: 0.1, relativeGap: 0.02 }
    expect(ask(4.5, wrong)).toMatchObject({ status: 'differs' })
  })

  test('of a goal to be raised, more is better', () => {
    const most: Brief = { ...BRIEF, goal: { maximise: 'cost' } }
    expect(ask(5, {}, {}, most)).toEqual({ status: 'confirmed', by: JSLP })
    expect(ask(4.9, {}, {}, most)).toMatchObject({ status: 'differs' })
    expect(ask(5.1, {}, {}, most)).toMatchObject({ status: 'differs' })
  })

  test('confirms what our own search finds, on 60 random briefs', () => {
    let confirmed = 0
    for (const brief of ruledBriefs({ count: 60, seed: 8100, least: 3, most: 12, kind: 'use' })) {
      const ours = solved(brief)
      if (ours.status !== 'optimal') continue
      const { status } = confirm(brief, ours, library, highs, 'highs', { timeMs: 5000 })
      expect(status).toBe('confirmed')
      confirmed++
    }
    expect(confirmed).toBeGreaterThan(15)
  })
})
