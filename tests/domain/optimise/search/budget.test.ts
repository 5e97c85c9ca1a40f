import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import type { SearchBudget } from '../../../../src/domain/optimise/search/allowance'
import { UndecidedSearch } from '../../../../src/domain/optimise/search/best-blend'
import { Allowance } from '../../../../src/domain/optimise/search/allowance'
import type { Answer } from '../../../../src/domain/optimise/brief/answer'
import { bestBlend } from '../../../../src/domain/optimise/search/best-blend'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { solveWithOwn } from '../../../../src/domain/lp/solvers/own'
import { disagreement, offShelf, solved } from './agreement'
import type { RuledReference } from './highs-briefs'
import { ruledBriefs } from './ruled-briefs'

/** A clock that goes on by a millisecond whenever it is looked at. */
function tickingClock(): () => number {
  let ms = 0
  return () => ms++
}

function answered(brief: Brief, budget: SearchBudget): Answer {
  return solveBrief(brief, library, solveWithOwn, budget)
}

/** What an answer found with ample time says of the truth, as another solver would tell it. */
function truthOf(brief: Brief, answer: Answer): RuledReference {
  if (answer.status !== 'optimal') return { status: 'infeasible' }
  return { status: 'optimal', objective: answer.goalValue - offShelf(brief) }
}

/** Briefs whose searches take some programs, with their true answers. */
const HARD = ruledBriefs({ count: 300, seed: 5100, least: 8, most: 40, kind: 'both' })
  .map((brief) => ({ brief, end: solved(brief, { timeMs: Infinity, nodes: 3000 }) }))
  .filter(({ end }) => end.status === 'optimal' || end.status === 'infeasible')

describe('a search that runs out', () => {
  test.each<[string, (limit: number) => SearchBudget]>([
    ['of programs', (nodes) => ({ nodes, timeMs: Infinity })],
    ['of time', (timeMs) => ({ timeMs, now: tickingClock() })],
  ])('%s gives the best so far and a bound, the best there is between them', (_of, budgetOf) => {
    const seen: Record<Answer['status'], number> = {
      optimal: 0,
      feasible: 0,
      undecided: 0,
      infeasible: 0,
      invalid: 0,
    }
    for (const { brief, end } of HARD) {
      for (const limit of [1, 6, 20, 60]) {
        const answer = answered(brief, budgetOf(limit))
        seen[answer.status]++
        expect(disagreement(brief, answer, truthOf(brief, end)), `${limit}`).toEqual([])
        if (answer.status !== 'feasible') continue
        const { goalValue, bound, gap, relativeGap } = answer
        expect(gap).toBeCloseTo(Math.abs(goalValue - bound), 9)
        expect(gap).toBeGreaterThan(0)
        expect(relativeGap).toBeCloseTo(gap / Math.max(Math.abs(goalValue), Math.abs(bound)), 9)
      }
    }
    expect(seen.invalid).toBe(0)
    expect(Math.min(seen.optimal, seen.feasible, seen.undecided)).toBeGreaterThan(9)
  })

  test('of time ends when the clock says so, not by the number of programs', () => {
    const [hard] = HARD.filter(({ brief }) => answered(brief, { nodes: 30 }).status === 'undecided')
    let looks = 0
    const now = () => (looks++ < 10 ? 0 : 1_000_000)
    const answer = answered(hard?.brief ?? NO_BRIEF, { timeMs: 5000, now })
    expect(answer.status).toBe('undecided')
    expect(looks).toBeLessThan(20)
  })

  test('is called off by whoever asked', () => {
    const [hard] = HARD.filter(({ brief }) => answered(brief, { nodes: 30 }).status === 'undecided')
    let asked = 0
    const answer = answered(hard?.brief ?? NO_BRIEF, { shouldStop: () => ++asked > 5 })
    expect(answer.status).toBe('undecided')
    expect(asked).toBeLessThan(10)
  })

  test('with no time at all still solves one program, for a bound', () => {
    for (const { brief, end } of HARD.slice(0, 40)) {
      const answer = answered(brief, { timeMs: 0 })
      expect(disagreement(brief, answer, truthOf(brief, end))).toEqual([])
      if ('bound' in answer) expect(Number.isFinite(answer.bound)).toBe(true)
    }
  })

  test('is never taken for an answer of a subordinate question without its gap', () => {
    let gaps = 0
    let thrown = 0
    for (const { brief } of HARD) {
      const answer = answered(brief, { nodes: 6 })
      const ask = () => bestBlend(brief, library, solveWithOwn, { nodes: 6 })
      if (answer.status === 'feasible') {
        gaps++
        expect(ask()?.gap).toBe(answer.gap)
      }
      if (answer.status === 'undecided') {
        thrown++
        expect(ask).toThrow(UndecidedSearch)
      }
      if (answer.status === 'infeasible') expect(ask()).toBeUndefined()
      if (answer.status === 'optimal') expect(ask()?.gap).toBeUndefined()
    }
    expect(Math.min(gaps, thrown)).toBeGreaterThan(3)
  })
})

const NO_BRIEF: Brief = { oils: {}, groups: [], measures: {}, goal: { minimise: 'cost' } }

describe('an allowance', () => {
  const progress = (nodes: number) => ({ nodes, best: null, bound: 0 })

  test('is shared evenly between searches, and what one leaves over goes to the rest', () => {
    const allowance = new Allowance({ nodes: 12, timeMs: Infinity })
    const programsOf = (searches: number, needed: number) => {
      const goOn = allowance.share(searches)
      let nodes = 0
      while (nodes < needed && goOn(progress(nodes))) nodes++
      return nodes
    }
    // 12 for three: 4 each; the first leaves 3 over, so the others have (4 + 4 + 3) / 2, rounded up.
    expect([programsOf(3, 1), programsOf(2, 99), programsOf(1, 99)]).toEqual([1, 6, 5])
    expect(allowance.isSpent).toBe(true)
  })

  test('of 9 ms for three searches gives each 3 ms', () => {
    let ms = 0
    const allowance = new Allowance({ timeMs: 9, now: () => ms })
    const goOn = allowance.share(3)
    ms = 2.9
    expect(goOn(progress(5))).toBe(true)
    ms = 3
    expect(goOn(progress(6))).toBe(false)
    expect(allowance.isSpent).toBe(false)
    ms = 9
    expect(allowance.isSpent).toBe(true)
  })

  test('lasts 5 s where nothing else is said', () => {
    let ms = 100
    const allowance = new Allowance({ now: () => ms })
    ms = 5099
    expect(allowance.isSpent).toBe(false)
    ms = 5100
    expect(allowance.isSpent).toBe(true)
  })
})
