import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import type { Land } from '../../../../src/domain/optimise/map/land-question'
import { alternativesUnderRules } from '../../../../src/domain/optimise/alternatives/alternatives-ruled'
import { attainableUnderRules } from '../../../../src/domain/optimise/ranges/attainable-ruled'
import { frontierUnderRules } from '../../../../src/domain/optimise/pareto/front-ruled'
import { landUnderRules } from '../../../../src/domain/optimise/map/land-ruled'
import { sampleUnderRules } from '../../../../src/domain/optimise/map/sample-ruled'
import { valueOf } from '../../../property/recheck'
import { AMPLE, near } from './agreement'
import { EverySet } from './enumeration'
import { ruledBriefs } from './ruled-briefs'
import { ruleFaults } from './rule-faults'

const AXES = ['hardness', 'lather'] as const

const briefs = (count: number, seed: number) =>
  ruledBriefs({ count, seed, least: 4, most: 7, kind: 'use' })

/** The best of a measure by trying every set of oils, wishes on some measures replaced. */
function everySet(brief: Brief, goal: Brief['goal'], measures: Brief['measures'] = {}) {
  return new EverySet({ ...brief, goal, measures: { ...brief.measures, ...measures } }).best()
}

/** The last thing that a generator yields. */
function last<T>(all: Iterable<T>): T | undefined {
  let one: T | undefined
  for (one of all);
  return one
}

describe('ranges under rules', () => {
  test('are those of trying every set of oils, on 40 random briefs', () => {
    const seen = { optimal: 0, infeasible: 0 }
    for (const brief of briefs(40, 7100)) {
      const ranges = attainableUnderRules(new BlendSpace(brief, library), AMPLE)
      const least = everySet(brief, { minimise: 'hardness' })
      const most = everySet(brief, { maximise: 'hardness' })
      if (ranges.status === 'optimal') {
        seen.optimal++
        expect(near(ranges.measures['hardness']?.min ?? NaN, least ?? NaN)).toBe(true)
        expect(near(ranges.measures['hardness']?.max ?? NaN, most ?? NaN)).toBe(true)
      } else {
        seen.infeasible++
        expect([ranges.status, least]).toEqual(['infeasible', undefined])
      }
    }
    expect(Math.min(seen.optimal, seen.infeasible)).toBeGreaterThan(5)
  })
})

describe('a frontier under rules', () => {
  test('is what every set of oils reaches at four values of one axis, on 25 random briefs', () => {
    let traced = 0
    for (const drawn of briefs(25, 7200)) {
      // A wish for any lot would hold other blends to these values than the frontier does.
      const brief = { ...drawn, robust: false }
      const space = new BlendSpace(brief, library)
      const [across, up] = AXES.map((measure) => ({ measure, wanted: 'more' as const }))
      if (!across || !up) throw new Error('Two axes')
      const found = frontierUnderRules(space, [across, up], AMPLE)
      if (!('vertices' in found)) continue
      expect(found.status).toBe('optimal')
      traced++
      for (const { blend } of found.vertices) expect(ruleFaults(brief, blend)).toEqual([])
      const hardest = everySet(brief, { maximise: 'hardness' }) ?? NaN
      const reached = found.vertices.map(({ measures }) => measures['hardness'] ?? NaN)
      expect(near(Math.max(...reached), hardest)).toBe(true)
      // Held to each of several least values of one axis, the most of the other lies on the frontier.
      for (const part of [0.1, 0.4, 0.7, 0.95]) {
        const low = Math.min(...reached)
        const min = low + part * (hardest - low)
        const truth = everySet(
          brief,
          { maximise: 'lather' },
          { hardness: { ...brief.measures['hardness'], min } },
        )
        if (truth === undefined) continue
        expect(latherAt(found, min)).toBeCloseTo(truth, 4)
      }
    }
    expect(traced).toBeGreaterThan(5)
  })
})

/** The most lather along a frontier among blends of at least some hardness. */
function latherAt(
  found: Extract<ReturnType<typeof frontierUnderRules>, { vertices: unknown }>,
  hardness: number,
): number {
  const at = (place: number) => {
    const measures = found.vertices[place]?.measures ?? {}
    return { x: measures['hardness'] ?? NaN, y: measures['lather'] ?? NaN }
  }
  const reached = found.facets.flatMap((facet) => {
    const [a, b] = [at(facet[0] ?? -1), at(facet.at(-1) ?? -1)]
    const [soft, hard] = a.x <= b.x ? [a, b] : [b, a]
    if (hard.x < hardness - 1e-9) return []
    const part = hard.x > soft.x ? Math.max(0, (hardness - soft.x) / (hard.x - soft.x)) : 0
    return [soft.y + part * (hard.y - soft.y)]
  })
  return Math.max(...reached)
}

describe('alternatives under rules', () => {
  test('keep rules and slack, the best of every set of oils first, on 25 random briefs', () => {
    let found = 0
    for (const drawn of briefs(25, 7300)) {
      const brief: Brief = { ...drawn, goal: { maximise: 'conditioning' } }
      const order = { slack: { fraction: 0.05 }, count: 4, seed: 1 }
      const answer = alternativesUnderRules(new BlendSpace(brief, library), order, AMPLE)
      if (answer.status !== 'optimal') continue
      found++
      const best = everySet(brief, brief.goal) ?? NaN
      expect(near(answer.alternatives[0]?.goalValue ?? NaN, best)).toBe(true)
      for (const { blend, goalValue } of answer.alternatives) {
        expect(ruleFaults(brief, blend)).toEqual([])
        expect(goalValue).toBeGreaterThanOrEqual(0.95 * best - 1e-6 * best)
      }
    }
    expect(found).toBeGreaterThan(5)
  })
})

describe('a land under rules', () => {
  const question = (brief: Brief) => ({ brief, axes: AXES, height: 'conditioning', grid: 15 })

  test('has the heights of trying every set of oils, and none where no set has a blend', () => {
    const seen = { exact: 0, none: 0 }
    for (const drawn of briefs(20, 7400)) {
      const brief = { ...drawn, robust: false }
      const land = last(landUnderRules(question(brief), library))
      const terrain = land?.ruled?.terrain
      if (!terrain) continue
      expect(land.ruled?.underWay).toBeUndefined()
      for (let k = 0; k < 12; k++) {
        // A measure that no rule lets vary has one place on its axis.
        const row = (5 * k + 2) % terrain.y.length
        const column = (7 * k + 3) % terrain.x.length
        const [x = NaN, y = NaN] = [terrain.x[column], terrain.y[row]]
        const state = terrain.states[row]?.[column]
        const at = { hardness: { min: x, max: x }, lather: { min: y, max: y } }
        const truth = new EverySet({
          ...brief,
          goal: { maximise: 'conditioning' },
          measures: { ...brief.measures, ...at },
        }).best()
        if (state === 'exact') {
          seen.exact++
          expect(near(terrain.values[row]?.[column] ?? NaN, truth ?? NaN)).toBe(true)
        } else if (state === 'none') {
          seen.none++
          expect(truth).toBeUndefined()
        }
      }
    }
    expect(seen.exact).toBeGreaterThan(5)
    expect(seen.none).toBeGreaterThan(5)
  })

  /** At most three of five oils, with land in it. */
  const brief: Brief = {
    oils: {
      coconut: { pricePerKg: 4 },
      olive: { pricePerKg: 7 },
      palm: { pricePerKg: 3 },
      castor: { pricePerKg: 8, max: 10 },
      shea: { pricePerKg: 9 },
    },
    groups: [],
    measures: {},
    goal: { minimise: 'cost' },
    rules: { atMostOils: 3, absentOrAtLeast: 10 },
  }

  test('is told from coarse to fine, and no grid that was whole goes away', () => {
    const sizes: number[] = []
    const parts: number[] = []
    for (const { ruled } of landUnderRules({ ...question(brief), height: 'cost' }, library)) {
      sizes.push(ruled?.terrain?.x.length ?? 0)
      parts.push(ruled?.underWay?.part ?? 1)
    }
    expect([...new Set(sizes)]).toEqual([0, 8, 15])
    expect(sizes).toEqual(sizes.toSorted((a, b) => a - b))
    expect(Math.min(...parts)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...parts)).toBe(1)
  })

  test('stopped, says what is under way, and what is known is exact', () => {
    let asked = 0
    const shouldStop = () => ++asked > 300
    const land = last(landUnderRules({ ...question(brief), grid: 60 }, library, { shouldStop }))
    expect(land?.ruled?.underWay).toBeDefined()
    expect(land?.ruled?.terrain?.states.flat()).not.toContain('open')
  })

  test('has pieces of a frontier whose corners keep the rules', () => {
    const land: Land | undefined = last(landUnderRules(question(brief), library))
    const corners = land?.ruled?.pieces.flat() ?? []
    expect(land?.ruled?.piecesAreProved).toBe(true)
    expect(corners.length).toBeGreaterThan(0)
    for (const { blend, x } of corners) {
      expect(ruleFaults(brief, blend)).toEqual([])
      expect(x).toBeCloseTo(valueOf(brief, 'hardness', blend), 6)
    }
  })

  test('is nothing where rules and limits leave no blend', () => {
    const none: Brief = {
      ...brief,
      oils: { olive: { max: 50 }, palm: { max: 40 }, shea: { max: 30 } },
      rules: { atMostOils: 2 },
      goal: { minimise: 'wear' },
    }
    expect(last(landUnderRules({ ...question(none), height: undefined }, library))).toMatchObject({
      region: [],
      terrain: undefined,
    })
  })

  test.each([
    ['sets of oils', brief],
    ['steps', { ...brief, rules: { atMostOils: 3, shareStep: 5 } }],
  ] as const)('is sampled with blends that keep rules on %s', (_, asked) => {
    const space = new BlendSpace(asked, library)
    const search = sampleUnderRules(space, 500, 3)
    let step = search.next()
    while (!step.done) step = search.next()
    const { count, oils, shares } = step.value
    const supports = new Set<string>()
    const blends = new Set<string>()
    for (let row = 0; row < count; row++) {
      const entries = oils.map(
        (oil, place) => [oil, shares[row * oils.length + place] ?? NaN] as const,
      )
      const blend = Object.fromEntries(entries.filter(([, share]) => share > 1e-6))
      expect(ruleFaults(asked, blend)).toEqual([])
      supports.add(Object.keys(blend).join())
      blends.add(JSON.stringify(blend))
    }
    expect(supports.size).toBeGreaterThan(3)
    if (asked.rules?.shareStep === undefined) expect(count).toBe(500)
    else {
      // In steps there are not so many blends, and none is told twice.
      expect(blends.size).toBe(count)
      expect(count).toBeGreaterThan(50)
    }
  })
})
