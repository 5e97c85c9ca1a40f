import { beforeAll, describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import type { BriefRules } from '../../../../src/domain/optimise/brief/brief-rules'
import { breaches } from '../../../../src/domain/optimise/space/verify'
import { disagreement, near, offShelf, solved } from '../search/agreement'
import { EverySet, everyBlendInSteps, goalOf } from '../search/enumeration'
import { loadHighsOnBriefs } from '../search/highs-briefs'
import { ruledBriefs } from '../search/ruled-briefs'
import { ruleFaults } from '../search/rule-faults'

/** Nodes that HiGHS may look at; few briefs in steps need more. */
const HIGHS_NODES = 5_000

const MINUTE_MS = 60_000

/** Three oils at 3, 5 and 4 per kg: the cheapest blend without rules is 40, 30 and 30 %, at 3.90. */
function shop(rules: BriefRules, change: Partial<Brief> = {}): Brief {
  return {
    oils: {
      palm: { pricePerKg: 3, max: 40 },
      olive: { pricePerKg: 5 },
      lard: { pricePerKg: 4, max: 30 },
    },
    groups: [],
    measures: {},
    goal: { minimise: 'cost' },
    rules,
    ...change,
  }
}

/** What a brief's answer comes to: its goal's value, or its status. */
function goalOrStatus(brief: Brief): number | string {
  const answer = solved(brief)
  return answer.status === 'optimal' ? Number(answer.goalValue.toFixed(9)) : answer.status
}

describe('the cheapest of three oils under rules, by hand', () => {
  test.each<[string, BriefRules, number | string]>([
    ['no rule: 0.4 · 3 + 0.3 · 5 + 0.3 · 4', {}, 3.9],
    ['at most 2 oils: 0.4 · 3 + 0.6 · 5, as 0.7 · 5 + 0.3 · 4 is 4.70', { atMostOils: 2 }, 4.2],
    ['at most 1 oil: only olive may be all of it', { atMostOils: 1 }, 5],
    ['in or at least 35 %: lard is out, 0.4 · 3 + 0.6 · 5', { absentOrAtLeast: 35 }, 4.2],
    ['in or at least 45 %: palm is out too', { absentOrAtLeast: 45 }, 5],
    ['steps of 20 %: 0.4 · 3 + 0.4 · 5 + 0.2 · 4', { shareStep: 20 }, 4],
    ['steps of 50 %: none of palm or lard reaches a step', { shareStep: 50 }, 5],
    ['palm or lard: 0.4 · 3 + 0.6 · 5', { oneOf: [['palm', 'lard']] }, 4.2],
    ['palm or olive: the others do not make 100 %', { oneOf: [['palm', 'olive']] }, 4.7],
  ])('%s', (_name, rules, cost) => {
    expect(goalOrStatus(shop(rules))).toBe(cost)
  })

  test('an oil that another requires comes in with a gram in a kilogram: 0.001 · 30 dearer than nothing', () => {
    const oils = { palm: { pricePerKg: 2 }, castor: { pricePerKg: 32 } }
    const brief = shop({ requires: [{ oil: 'palm', with: 'castor' }] }, { oils })
    expect(goalOrStatus(brief)).toBeCloseTo(2 + 0.001 * 30, 9)
  })

  test('an oil that another requires has what every oil has that is in: 0.1 · 30 dearer', () => {
    const oils = { palm: { pricePerKg: 2 }, castor: { pricePerKg: 32 } }
    const rules = { requires: [{ oil: 'palm', with: 'castor' }], absentOrAtLeast: 10 }
    expect(goalOrStatus(shop(rules, { oils }))).toBeCloseTo(2 + 0.1 * 30, 9)
  })

  test('an empty set of rules asks nothing', () => {
    expect(goalOrStatus(shop({ requires: [], oneOf: [] }))).toBe(3.9)
  })
})

describe('the blend closest to another under rules, by hand', () => {
  const goal = { closestTo: { palm: 30, olive: 45, lard: 25 } }

  test.each<[string, BriefRules, number | string]>([
    ['no rule: the blend itself', {}, 0],
    ['at most 2 oils: without the 25 of lard, which go to others', { atMostOils: 2 }, 50],
    ['in or at least 30 %: lard at 30, 5 off another', { absentOrAtLeast: 30 }, 10],
    ['steps of 20 %: 40, 40 and 20 is 10 + 5 + 5 away', { shareStep: 20 }, 20],
    ['steps of 25 %: 25, 50 and 25 is 5 + 5 away', { shareStep: 25 }, 10],
    ['steps of 10 %: 30, 50 and 20, or 30, 40 and 30', { shareStep: 10 }, 10],
  ])('%s', (_name, rules, change) => {
    expect(goalOrStatus(shop(rules, { goal }))).toBe(change)
  })

  test('what it has of oils off the shelf counts as change: 20 of castor, once off and once on', () => {
    const far = { closestTo: { olive: 80, castor: 20 } }
    expect(goalOrStatus(shop({ atMostOils: 2 }, { goal: far }))).toBe(40)
  })
})

describe('the best blend under rules', () => {
  test(
    'is that of trying every set of up to 12 oils, on 60 random briefs',
    () => {
      const seen = { optimal: 0, infeasible: 0 }
      const draw = { count: 60, seed: 4100, least: 9, most: 12, kind: 'use' } as const
      for (const brief of ruledBriefs(draw)) {
        const answer = solved(brief)
        const truth = new EverySet(brief).best()
        if (answer.status === 'optimal') {
          seen.optimal++
          expect(near(answer.goalValue, (truth ?? NaN) + offShelf(brief)), `${truth}`).toBe(true)
          expect(ruleFaults(brief, answer.blend)).toEqual([])
        } else {
          seen.infeasible++
          expect([answer.status, truth]).toEqual(['infeasible', undefined])
        }
      }
      expect(seen.optimal).toBeGreaterThan(15)
      expect(seen.infeasible).toBeGreaterThan(15)
    },
    MINUTE_MS,
  )

  test('in steps is the best of every blend in steps, on 60 random briefs', () => {
    const seen = { optimal: 0, infeasible: 0 }
    const draw = { count: 60, seed: 4200, least: 2, most: 5, kind: 'both' } as const
    for (const drawn of ruledBriefs(draw)) {
      const brief = { ...drawn, robust: false, rules: { ...drawn.rules, shareStep: 5 } }
      const answer = solved(brief)
      const sign = 'maximise' in brief.goal ? -1 : 1
      const goals = everyBlendInSteps(brief).map((blend) => sign * goalOf(brief, blend))
      if (answer.status === 'optimal') {
        seen.optimal++
        expect(near(sign * answer.goalValue, Math.min(...goals))).toBe(true)
      } else {
        seen.infeasible++
        expect([answer.status, goals]).toEqual(['infeasible', []])
      }
    }
    expect(seen.optimal).toBeGreaterThan(15)
    expect(seen.infeasible).toBeGreaterThan(15)
  })

  let highs: Awaited<ReturnType<typeof loadHighsOnBriefs>>
  beforeAll(async () => {
    highs = await loadHighsOnBriefs()
  })

  test.each([
    { count: 330, seed: 4300, least: 2, most: 16, kind: 'use' },
    { count: 40, seed: 4400, least: 17, most: 63, kind: 'use' },
    { count: 70, seed: 4500, least: 2, most: 12, kind: 'steps' },
    { count: 70, seed: 4600, least: 2, most: 12, kind: 'both' },
  ] as const)(
    'is that of HiGHS on $count random briefs of $least to $most oils, rules on $kind',
    (draw) => {
      const seen: Record<string, number> = { optimal: 0, infeasible: 0, unfinished: 0 }
      ruledBriefs(draw).forEach((brief, number) => {
        const budget = { timeMs: Infinity, nodes: 10_000 }
        const truth = highs(brief, HIGHS_NODES)
        expect(disagreement(brief, solved(brief, budget), truth), `brief ${number}`).toEqual([])
        seen[truth.status] = (seen[truth.status] ?? 0) + 1
      })
      expect(seen.optimal).toBeGreaterThan(draw.count / 4)
      expect(seen.infeasible).toBeGreaterThan(draw.count / 10)
      expect(seen.unfinished).toBeLessThan(draw.count / 20)
    },
    MINUTE_MS,
  )

  test('holds for any lot of the oils where the brief asks that too, on 60 random briefs', () => {
    let kept = 0
    const draw = { count: 60, seed: 4700, least: 4, most: 16, kind: 'use' } as const
    for (const drawn of ruledBriefs(draw)) {
      const brief: Brief = { ...drawn, robust: true }
      const answer = solved(brief)
      expect(disagreement(brief, answer, highs(brief, HIGHS_NODES))).toEqual([])
      if (answer.status !== 'optimal') continue
      kept++
      expect(breaches(brief, answer.blend, library)).toEqual([])
    }
    expect(kept).toBeGreaterThan(10)
  })
})

describe('under more rules', () => {
  test('no goal gets better, on 60 random briefs', () => {
    let compared = 0
    const draw = { count: 60, seed: 4800, least: 3, most: 20, kind: 'use' } as const
    for (const brief of ruledBriefs(draw)) {
      const [strict, free] = [solved(brief), solved({ ...brief, rules: undefined })]
      if (free.status !== 'optimal') expect(strict.status).toBe('infeasible')
      if (strict.status !== 'optimal' || free.status !== 'optimal') continue
      compared++
      const sign = 'maximise' in brief.goal ? -1 : 1
      const slack = 1e-6 * Math.max(1, Math.abs(free.goalValue))
      expect(sign * (strict.goalValue - free.goalValue)).toBeGreaterThanOrEqual(-slack)
    }
    expect(compared).toBeGreaterThan(15)
  })

  test('the goal does not depend on the order of the shelf, on 40 random briefs', () => {
    const draw = { count: 40, seed: 4900, least: 3, most: 20, kind: 'use' } as const
    for (const brief of ruledBriefs(draw)) {
      const turned = { ...brief, oils: Object.fromEntries(Object.entries(brief.oils).reverse()) }
      const [one, other] = [solved(brief), solved(turned)]
      expect(other.status).toBe(one.status)
      if (one.status !== 'optimal' || other.status !== 'optimal') continue
      expect(near(one.goalValue, other.goalValue)).toBe(true)
    }
  })
})
