import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { type Blend, totalChange } from '../../../../src/domain/blend/blend'
import {
  alternativesTo,
  DISTINCT_PERCENT,
} from '../../../../src/domain/optimise/alternatives/alternatives-linear'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { briefProgram, goalSign } from '../../../../src/domain/optimise/space/brief-program'
import { breaches, goalValue } from '../../../../src/domain/optimise/space/verify'
import { sampleBriefs } from '../../../property/briefs'
import { faults } from '../../../property/recheck'
import { highs } from '../../lp/solvers/loaded-highs'
import { libraryOfValues } from '../../blend/stub-library'
import { asked, bestByHighs, EIGHT, leastChangeOf } from './asking'

/** Relative: what alternatives are held to, and what two solvers agree to. */
const SLACK_TOLERANCE = 1e-9
const OPTIMUM_TOLERANCE = 1e-7

const BRIEFS = 200
const cases = sampleBriefs(BRIEFS, 20_264).map((brief, k) => {
  const order = k % 3 === 0 ? { ...EIGHT, slack: { absolute: 4 } } : { ...EIGHT, seed: k }
  const found = alternativesTo(new BlendSpace(brief, library), order)
  return { brief, order, found, best: bestByHighs(brief) }
})
const answered = cases.flatMap(({ brief, order, found, best }) =>
  found.status === 'optimal' && best ? [{ brief, order, found, best }] : [],
)

describe(`the alternatives of ${BRIEFS} random briefs`, () => {
  test('are there exactly where HiGHS finds a blend, for goals of every form', () => {
    for (const { found, best } of cases) expect(found.status === 'optimal').toBe(best !== undefined)
    const forms = new Set(answered.flatMap(({ brief }) => Object.keys(brief.goal)))
    expect(forms).toEqual(new Set(['minimise', 'maximise', 'closestTo']))
    expect(answered.length).toBeGreaterThan(BRIEFS / 2)
    expect(answered.some(({ brief }) => brief.robust)).toBe(true)
  })

  test('start with a blend as good as the best of HiGHS', () => {
    for (const { found, best } of answered) {
      const [first] = found.alternatives
      const gap = Math.abs((first?.goalValue ?? NaN) - best.goalValue)
      expect(gap).toBeLessThanOrEqual(OPTIMUM_TOLERANCE * Math.max(1, Math.abs(best.goalValue)))
      expect(first?.changeFromBest).toBe(0)
    }
  })

  test('keep every limit of their brief', () => {
    for (const { brief, found } of answered) {
      for (const { blend } of found.alternatives) {
        expect(faults(brief, blend)).toEqual([])
        expect(breaches(brief, blend, library)).toEqual([])
      }
    }
  })

  test('stay within the slack to one part in 1e9', () => {
    for (const { brief, order, found } of answered) {
      const best = found.alternatives[0]?.goalValue ?? NaN
      const slack =
        'fraction' in order.slack ? order.slack.fraction * Math.abs(best) : order.slack.absolute
      const tolerance = SLACK_TOLERANCE * Math.max(1, Math.abs(best))
      for (const { blend, goalValue: told, worseBy } of found.alternatives) {
        const value = goalValue(brief, blend, library)
        const worse = 'maximise' in brief.goal ? best - value : value - best
        expect(told).toBe(value)
        expect(worse).toBeLessThanOrEqual(slack + tolerance)
        expect(worse).toBeGreaterThanOrEqual(-tolerance)
        expect(Math.abs(worseBy - worse)).toBeLessThanOrEqual(2 * tolerance)
      }
    }
  })

  test('never repeat one another, and tell how little any two change', () => {
    for (const { found } of answered) {
      const blends = found.alternatives.map(({ blend }) => blend)
      if (blends.length === 1) expect(found.leastChange).toBeUndefined()
      else expect(found.leastChange).toBeCloseTo(leastChangeOf(blends), 6)
      if (blends.length > 1) expect(leastChangeOf(blends)).toBeGreaterThan(DISTINCT_PERCENT - 1e-6)
    }
  })

  test('are eight, or say why not', () => {
    for (const { found } of answered) {
      const { length } = found.alternatives
      if (length === 8) expect(found.shortage).toBeUndefined()
      else expect(found.shortage).toMatch(new RegExp(`There are ${length} of 8`, 'u'))
    }
    const full = answered.filter(({ found }) => found.alternatives.length === 8)
    expect(full.length).toBeGreaterThan(answered.length / 2)
  })
})

describe('the second alternative', () => {
  test('is the blend farthest from the best that the slack allows, in small briefs', () => {
    let exact = 0
    const small = sampleBriefs(400, 20_265)
      .filter(({ oils }) => Object.keys(oils).length >= 3 && Object.keys(oils).length <= 6)
      .filter(({ goal }) => !('closestTo' in goal))
      .slice(0, 40)
    const met = small.flatMap((brief) => {
      const order = { ...EIGHT, count: 2, pool: 150 }
      const found = alternativesTo(new BlendSpace(brief, library), order)
      if (found.status !== 'optimal') return []
      const [first, second] = found.alternatives
      const farthest = farthestFrom(brief, first?.blend ?? {}, found.goalLimit)
      if (farthest < DISTINCT_PERCENT) return []
      const change = totalChange(first?.blend ?? {}, second?.blend ?? {})
      expect(change).toBeLessThan(farthest + 1e-5)
      expect(change).toBeGreaterThan(farthest / 2)
      if (change > farthest - 1e-5) exact++
      return [change]
    })
    expect(met.length).toBeGreaterThan(15)
    expect(exact).toBe(met.length)
  })
})

describe('alternatives', () => {
  const brief = answered.find(({ found }) => found.alternatives.length === 8)?.brief ?? none()

  test('are the same for the same seed, whatever the space was asked before', () => {
    const first = asked(brief)
    expect(asked(brief)).toEqual(first)
    const used = new BlendSpace(brief, library)
    for (const measure of used.measures) used.least(used.perPercent(measure))
    used.limit('hardness', { min: 30, max: 31 })
    expect(alternativesTo(used, EIGHT)).toEqual(first)
    expect(alternativesTo(used, EIGHT)).toEqual(first)
  })

  test('are others for another seed, but for the best', () => {
    const [one, other] = [asked(brief), asked(brief, { ...EIGHT, seed: 2 })]
    expect(other.alternatives[0]).toEqual(one.alternatives[0])
    expect(other.alternatives).not.toEqual(one.alternatives)
  })

  test('differ no less from a larger pool of the same seed, over many briefs', () => {
    let [small, large] = [0, 0]
    for (const one of answered.slice(0, 60)) {
      small += asked(one.brief, { ...EIGHT, pool: 10 }).leastChange ?? 0
      large += asked(one.brief, { ...EIGHT, pool: 150 }).leastChange ?? 0
    }
    expect(large).toBeGreaterThan(small)
  })

  test('may be many: 500 asked for come, or are said to be short, and none twice', () => {
    const { alternatives, leastChange, shortage } = asked(brief, { ...EIGHT, count: 500 })
    expect(alternatives.length).toBeGreaterThan(30)
    expect(alternatives.length === 500).toBe(shortage === undefined)
    expect(leastChange).toBeGreaterThanOrEqual(DISTINCT_PERCENT)
  })

  test('leave the space as it was', () => {
    const space = new BlendSpace(brief, library)
    const lather = () => space.least(space.perPercent('lather'))?.objective ?? NaN
    const before = lather()
    alternativesTo(space, EIGHT)
    expect(lather()).toBeCloseTo(before, 9)
  })

  test('are none where no blend keeps the brief', () => {
    const impossible = { ...brief, measures: { hardness: { min: 99 } } }
    expect(alternativesTo(new BlendSpace(impossible, library), EIGHT)).toEqual({
      status: 'infeasible',
    })
  })

  test.for([
    [{ count: 0 }, /count is 0/u],
    [{ count: 2.5 }, /count is 2\.5/u],
    [{ pool: -1 }, /pool is -1/u],
    [{ slack: { fraction: -0.1 } }, /slack is -0\.1/u],
    [{ slack: { absolute: NaN } }, /slack is NaN/u],
  ] as const)('are refused for %o', ([wrong, message]) => {
    const space = new BlendSpace(brief, library)
    expect(() => alternativesTo(space, { ...EIGHT, ...wrong })).toThrow(message)
  })
})

describe('by hand', () => {
  // Cheap costs 2 a kilogram, dear 10: a blend of x % dear costs 2 + 0.08 x.
  const two = libraryOfValues({ cheap: { worth: 2 }, dear: { worth: 10 } })
  const brief: Brief = {
    oils: { cheap: {}, dear: {} },
    groups: [],
    measures: {},
    goal: { minimise: 'worth' },
  }
  const dearIn = (order: Partial<typeof EIGHT>, changed: Partial<Brief> = {}) => {
    const space = new BlendSpace({ ...brief, ...changed }, two)
    const found = alternativesTo(space, { ...EIGHT, ...order })
    if (found.status !== 'optimal') throw new Error('no blend')
    return found.alternatives.map(({ blend }) => Math.round(1e6 * (blend.dear ?? 0)) / 1e6)
  }

  test('a slack of 0.8 reaches 10 % dear, and mixtures fill up between the two ends', () => {
    expect(dearIn({ slack: { absolute: 0.8 }, count: 3 })).toEqual([0, 10, 5])
    expect(dearIn({ slack: { absolute: 0.8 }, count: 5 })).toEqual([0, 10, 5, 2.5, 7.5])
  })

  test('a slack of 40 % of the best, 2, is the same', () => {
    expect(dearIn({ slack: { fraction: 0.4 }, count: 2 })).toEqual([0, 10])
  })

  test('a slack of 0.08 has two: at 1 % dear a mixture would change by just one point', () => {
    // Ends at 0 and 1 % change by 2; the middle changes by 1 from each, which still counts.
    expect(dearIn({ slack: { absolute: 0.08 } })).toEqual([0, 1, 0.5])
    expect(dearIn({ slack: { absolute: 0.07 } })).toEqual([0, 0.875])
  })

  test('no slack has one, and so has a shelf of one oil', () => {
    expect(dearIn({ slack: { absolute: 0 } })).toEqual([0])
    expect(dearIn({}, { oils: { dear: {} } })).toEqual([100])
  })

  test('a wish on the goal’s own measure holds beside the slack', () => {
    expect(
      dearIn({ slack: { absolute: 8 }, count: 2 }, { measures: { worth: { max: 6 } } }),
    ).toEqual([0, 50])
    expect(
      dearIn({ slack: { absolute: 1.6 }, count: 2 }, { measures: { worth: { min: 4 } } }),
    ).toEqual([25, 45])
  })

  test('to have most of something, the slack goes down from the most', () => {
    expect(dearIn({ slack: { fraction: 0.2 }, count: 2 }, { goal: { maximise: 'worth' } })).toEqual(
      [100, 75],
    )
  })

  test('closest to 30 % dear, a change of 8 more goes 4 % either way', () => {
    const goal = { closestTo: { cheap: 70, dear: 30 } }
    expect(
      dearIn({ slack: { absolute: 8 }, count: 3 }, { goal }).toSorted((a, b) => a - b),
    ).toEqual([26, 30, 34])
    // What the best does not change, a fraction of it does not either.
    expect(dearIn({ slack: { fraction: 0.5 } }, { goal })).toEqual([30])
  })

  test('closest to a blend with an oil that is not on the shelf, its share has to go somewhere', () => {
    // Half of the target is not there: at least 50 points change, 50 more must come in.
    const three = libraryOfValues({ cheap: { worth: 2 }, dear: { worth: 10 }, gone: { worth: 5 } })
    const goal = { closestTo: { cheap: 30, dear: 20, gone: 50 } }
    const space = new BlendSpace({ ...brief, goal }, three)
    const found = alternativesTo(space, { ...EIGHT, count: 2, slack: { absolute: 0 } })
    if (found.status !== 'optimal') throw new Error('no blend')
    expect(found.goalLimit).toBeCloseTo(100, 9)
    // Any split of the 50 will do: from 30 cheap and 70 dear to 80 cheap and 20 dear.
    const dear = found.alternatives.map(({ blend }) => blend.dear ?? NaN).sort((a, b) => a - b)
    expect(dear[0]).toBeCloseTo(20, 6)
    expect(dear[1]).toBeCloseTo(70, 6)
  })
})

function none(): never {
  throw new Error('No brief has eight alternatives')
}

/**
 * The largest total change from a blend within a brief and a limit of its goal: the best of one program
 * for each way in which the oils may rise and fall, since |a| is the larger of a and -a.
 */
function farthestFrom(brief: Brief, from: Blend, limit: number): number {
  const oils = Object.keys(brief.oils)
  const { cost, ...limits } = briefProgram(brief, library)
  const least = goalSign(brief.goal) * limit
  const nearBest = { coefficients: cost, lower: -Infinity, upper: least }
  const changes = signs(oils.length).map((ways) => {
    // The most of a rise is the least of its opposite.
    const away = ways.map((way) => -way)
    const program = { ...limits, cost: away, rows: [...limits.rows, nearBest] }
    const outcome = highs(program)
    if (outcome.status !== 'optimal') throw new Error(`Blends near the best: ${outcome.status}`)
    return oils.reduce(
      (sum, oil, at) => sum - (ways[at] ?? NaN) * (from[oil] ?? 0),
      -outcome.objective,
    )
  })
  return Math.max(...changes)
}

/** All ways to give so many oils a sign. */
function signs(count: number): number[][] {
  if (count === 0) return [[]]
  return signs(count - 1).flatMap((rest) => [
    [1, ...rest],
    [-1, ...rest],
  ])
}
