import { describe, expect, test } from 'vitest'
import { briefAsFile, briefFile, briefOf } from '../../../../src/data/brief-file'
import { library } from '../../../../src/data/library'
import type { Blend } from '../../../../src/domain/blend/blend'
import { type AcidMeasure, measureOfOil } from '../../../../src/domain/blend/measure'
import type { Oil } from '../../../../src/domain/blend/oil'
import type { Brief, Goal, Wish } from '../../../../src/domain/optimise/brief/brief'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { solveAt } from '../../../../src/domain/optimise/solve/point'
import type { Found } from '../../../../src/domain/optimise/brief/answer'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { drawFigures } from '../../../../src/domain/optimise/lots/draws'
import { lotSpan } from '../../../../src/domain/optimise/lots/lot-span'
import { lotValue } from '../../../../src/domain/optimise/lots/lot'
import { robustPrice } from '../../../../src/domain/optimise/solve/robust-price'
import { seededRandom } from '../../../../src/domain/chance/random'
import { breaches } from '../../../../src/domain/optimise/space/verify'
import { sampleBriefs } from '../../../property/briefs'
import { highs } from '../../lp/solvers/loaded-highs'
import { ACID_MEASURES, cornerLot, oil, oilOfLot } from './lots'
import { ROBUST } from './robust-briefs'

const DRAWS = 100_000
const CHEAP: Goal = { minimise: 'cost' }
const TYPICAL_ONLY = { typicalOnly: true }
/** What a solver's answer may miss a limit by, in points (`CHECK_TOLERANCE`). */
const SLACK = 1e-6

describe.for(ROBUST.map((one) => [one.name, one] as const))('a robust bar: %s', ([, { brief }]) => {
  const { blend } = solved(brief)

  test(`breaks no limit in ${DRAWS} random lots`, () => {
    const wished = wishesOf(brief)
    const figures = wished.map(
      ({ measure }) =>
        (one: Oil) =>
          lotValue(measure, one),
    )
    const drawn = drawFigures(blend, library, figures, { count: DRAWS, seed: 99 })
    wished.forEach(({ min, max }, index) => {
      const values = drawn[index] ?? new Float64Array()
      expect(values.length).toBe(DRAWS)
      expect(values.reduce((least, one) => Math.min(least, one))).toBeGreaterThan(min - SLACK)
      expect(values.reduce((most, one) => Math.max(most, one))).toBeLessThan(max + SLACK)
    })
  })

  test('breaks no limit in 2,000 corner lots that the test makes', () => {
    const random = seededRandom(4)
    for (let k = 0; k < 2_000; k++) {
      const lots = lotsOf(blend, (one) => oilOfLot(one, cornerLot(one, random)))
      for (const { measure, min, max } of wishesOf(brief)) {
        const value = valueOfLots(measure, blend, lots)
        expect(value).toBeGreaterThan(min - SLACK)
        expect(value).toBeLessThan(max + SLACK)
      }
    }
  })

  test('stands exactly at some limit in a lot that the test makes', () => {
    const gaps = wishesOf(brief).flatMap(({ measure, min, max }) => [
      valueOfLots(measure, blend, worstLots(measure, blend, 1)) - min,
      max - valueOfLots(measure, blend, worstLots(measure, blend, -1)),
    ])
    expect(Math.min(...gaps)).toBeGreaterThan(-SLACK)
    expect(gaps.filter((gap) => Math.abs(gap) < SLACK).length).toBeGreaterThan(0)
  })

  test('would break a limit somewhere if only typical lots counted', () => {
    const typical = solved({ ...brief, robust: false })
    expect(breaches({ ...brief, robust: false }, typical.blend, library)).toEqual([])
    expect(breaches(brief, typical.blend, library)).not.toEqual([])
  })

  test('pays the difference of the two goals for it, and no less than nothing', () => {
    const { typical, robust, price } = robustPrice(brief, library, highs)
    if (typical.status !== 'optimal' || robust.status !== 'optimal') throw new Error('no blend')
    const sign = 'maximise' in brief.goal ? -1 : 1
    expect(price).toBeCloseTo(sign * (robust.goalValue - typical.goalValue), 9)
    expect(price).toBeGreaterThan(0)
    expect(robust.blend).toEqual(blend)
  })
})

const ofMeasures = ROBUST.flatMap(({ name, brief }) => {
  const { goal } = brief
  if ('closestTo' in goal) return []
  return [{ name, brief, measure: 'minimise' in goal ? goal.minimise : goal.maximise }]
})

test.for(ofMeasures)('the warm simplex finds as good a robust bar as HiGHS: $name', (one) => {
  const space = new BlendSpace(one.brief, library)
  const sign = 'minimise' in one.brief.goal ? 1 : -1
  const least = space.least(space.perPercent(one.measure).map((value) => sign * value))
  if (!least) throw new Error('The simplex finds no blend')
  expect(sign * least.objective).toBeCloseTo(solved(one.brief).goalValue, 7)
  expect(breaches(one.brief, space.checkedBlend(least.x), library)).toEqual([])
})

describe('a robust brief', () => {
  test('is kept by a blend only if the typical brief is, over 150 random briefs', () => {
    let kept = 0
    for (const brief of sampleBriefs(150, 20_271)) {
      const robust = solveBrief({ ...brief, robust: true }, library, highs)
      if (robust.status !== 'optimal') continue
      kept++
      expect(breaches({ ...brief, robust: false }, robust.blend, library)).toEqual([])
      expect(robustPrice(brief, library, highs).price).toBeGreaterThanOrEqual(0)
    }
    expect(kept).toBeGreaterThan(20)
  })

  test('has the same answer from the warm simplex over 150 random briefs', () => {
    const seen = { optimal: 0, infeasible: 0 }
    for (const brief of sampleBriefs(150, 20_272)) {
      const robust: Brief = { ...brief, goal: { maximise: 'lather' }, robust: true }
      const answer = solveBrief(robust, library, highs)
      const space = new BlendSpace(robust, library)
      const least = space.least(space.perPercent('lather').map((value) => -value))
      if (answer.status === 'optimal')
        expect(-(least?.objective ?? NaN)).toBeCloseTo(answer.goalValue, 6)
      else expect(least).toBeUndefined()
      if (answer.status === 'optimal' || answer.status === 'infeasible') seen[answer.status]++
    }
    expect(seen.optimal).toBeGreaterThan(20)
    expect(seen.infeasible).toBeGreaterThan(20)
  })

  test('says which limits cannot hold together for any lot, each of them needed', () => {
    const brief: Brief = {
      oils: { olive: {}, palm: {}, coconut: { max: 30 } },
      groups: [],
      measures: { hardness: { min: 36, max: 40 }, lather: { min: 20 } },
      goal: { maximise: 'conditioning' },
      robust: true,
    }
    const answer = solveBrief(brief, library, highs)
    // Between 36 and 40 there is room for typical lots, but palm and olive vary by more than 4 points.
    expect(solveBrief({ ...brief, robust: false }, library, highs).status).toBe('optimal')
    expect(answer).toEqual({
      status: 'infeasible',
      conflict: ['measures.hardness.min', 'measures.hardness.max'],
    })
  })

  test('asks nothing more of cost, which does not vary', () => {
    const brief: Brief = {
      oils: { olive: { pricePerKg: 8 }, coconut: { pricePerKg: 4 } },
      groups: [],
      measures: { cost: { min: 5, max: 5 } },
      goal: { maximise: 'lather' },
      robust: true,
    }
    // By hand: a quarter of 8 and three quarters of 4.
    expect(solved(brief).blend.coconut).toBeCloseTo(75, 9)
  })

  test('still reaches a point of the map, at its typical value, where the point is asked so', () => {
    const { brief } = ROBUST[0] ?? { brief: undefined }
    if (!brief) throw new Error('There is no robust brief')
    const { hardness } = solved(brief).measures
    const value = hardness ?? NaN
    const held = { min: value - SLACK, max: value + SLACK }
    const asked: Brief = {
      ...brief,
      measures: { ...brief.measures, hardness: { ...held, typicalOnly: true } },
    }
    expect(solved(asked).measures.hardness).toBeCloseTo(value, 5)
    const everyLot = { ...brief, measures: { ...brief.measures, hardness: held } }
    expect(solveBrief(everyLot, library, highs).status).toBe('infeasible')
    // The point of a brief for typical lots is where it always was.
    const plain = { ...brief, robust: false }
    expect(solveAt(plain, { hardness: value }, library, highs).status).toBe('optimal')
  })

  test('comes back from a file as it was, and a file without the word stays without it', () => {
    const { brief } = ROBUST[0] ?? { brief: undefined }
    if (!brief) throw new Error('There is no robust brief')
    expect(briefOf(briefFile.parse(briefAsFile(brief)))).toEqual(brief)
    const { oils, groups, measures, goal } = brief
    const plain: Brief = { oils, groups, measures, goal }
    expect(briefAsFile(plain)).not.toHaveProperty('robust')
    expect(briefOf(briefFile.parse(briefAsFile(plain)))).not.toHaveProperty('robust', true)
    expect(briefFile.safeParse({ ...briefAsFile(plain), robust: 'yes' }).success).toBe(false)
  })
})

describe('the check of an answer to a robust brief', () => {
  const { low, high } = lotSpan(library, {}, 'hardness', { olive: 100 })
  const typical = measureOfOil(measureNamed('hardness'), oil('olive'))
  const found = (limits: Wish, robust = true) =>
    breaches(
      { oils: { olive: {} }, groups: [], measures: { hardness: limits }, goal: CHEAP, robust },
      { olive: 100 },
      library,
    )

  test('names the side that some lot misses, though the typical lot keeps it', () => {
    expect(found({ min: low + 1, max: high })).toEqual([`measures.hardness.min: ${low}`])
    expect(found({ min: low, max: high - 1 })).toEqual([`measures.hardness.max: ${high}`])
    expect(found({ min: low, max: high })).toEqual([])
    expect(found({ min: low + 1, max: high - 1 }, false)).toEqual([])
  })

  test('holds a wish about typical lots to those alone', () => {
    expect(found({ min: typical, max: typical })).toHaveLength(2)
    expect(found({ min: typical, max: typical, ...TYPICAL_ONLY })).toEqual([])
  })
})

describe('the space of a robust brief', () => {
  const brief: Brief = { ...(ROBUST[0]?.brief ?? fail()), goal: { minimise: 'cost' } }
  const least = (space: BlendSpace) => space.least(space.perPercent('cost'))?.objective

  test('takes another range for any lot, and gives the stated one back', () => {
    const space = new BlendSpace(brief, library)
    const before = least(space)
    space.limit('hardness', { min: 20 })
    const changed = { ...brief, measures: { ...brief.measures, hardness: { min: 20 } } }
    expect(least(space)).toBeCloseTo(solved(changed).goalValue, 7)
    space.restoreAll()
    expect(least(space)).toBeCloseTo(before ?? NaN, 9)
  })

  test('takes a range on a side, and a measure, that the brief says nothing of', () => {
    const space = new BlendSpace(brief, library)
    space.limit('mildness', { min: 61, max: 80 })
    const mildness = { min: 61, max: 80 }
    const changed = { ...brief, measures: { ...brief.measures, mildness } }
    expect(least(space)).toBeCloseTo(solved(changed).goalValue, 7)
    space.restore('mildness')
    expect(least(space)).toBeCloseTo(solved(brief).goalValue, 7)
  })

  test('holds a typical value, with the wish on it set aside', () => {
    const space = new BlendSpace(brief, library)
    space.hold('hardness', { min: 33, max: 33 })
    const outcome = space.least(space.perPercent('cost'))
    const held = {
      ...brief,
      measures: { ...brief.measures, hardness: { min: 33, max: 33, typicalOnly: true } },
    }
    expect(outcome?.objective).toBeCloseTo(solved(held).goalValue, 7)
    expect(outcome?.rowValues[space.rowOf('hardness')]).toBeCloseTo(33, 9)
    space.restore('hardness')
    expect(least(space)).toBeCloseTo(solved(brief).goalValue, 7)
  })

  test('names the rows its wishes stand in', () => {
    const space = new BlendSpace(brief, library)
    const outcome = space.least(space.perPercent('cost'))
    const row = outcome?.rowValues[space.wishRowOf('hardness', 'min')]
    expect(row).toBeGreaterThanOrEqual((brief.measures.hardness?.min ?? NaN) - SLACK)
    expect(row).toBeLessThan(outcome?.rowValues[space.rowOf('hardness')] ?? NaN)
    expect(space.wishRowOf('cost', 'max')).toBe(space.rowOf('cost'))
    const plain = new BlendSpace({ ...brief, robust: false }, library)
    expect(plain.wishRowOf('hardness', 'min')).toBe(plain.rowOf('hardness'))
  })
})

function fail(): never {
  throw new Error('The test names what is not there')
}

function measureNamed(id: string): AcidMeasure {
  return ACID_MEASURES.find((measure) => measure.id === id) ?? fail()
}

function solved(brief: Brief): Found {
  const answer = solveBrief(brief, library, highs)
  if (answer.status !== 'optimal') throw new Error(`The brief is ${answer.status}`)
  return answer
}

function wishesOf(brief: Brief) {
  return ACID_MEASURES.flatMap((measure) => {
    const wish = brief.measures[measure.id]
    return wish ? [{ measure, min: wish.min ?? -Infinity, max: wish.max ?? Infinity }] : []
  })
}

function lotsOf(blend: Blend, lotOf: (one: Oil) => Oil): Map<string, Oil> {
  return new Map(Object.keys(blend).map((id) => [id, lotOf(oil(id))]))
}

/** A blend's value from the lots of its oils, as the library reckons oils. */
function valueOfLots(measure: AcidMeasure, blend: Blend, lots: ReadonlyMap<string, Oil>): number {
  return Object.entries(blend).reduce((sum, [id, share]) => {
    return sum + (share / 100) * measureOfOil(measure, lots.get(id) ?? oil(id))
  }, 0)
}

/**
 * The lots in which a blend has least (`sign` 1) or most (-1) of a measure: the acids that count least
 * or most are full, the others at their lows, but for one that makes up the sum.
 */
function worstLots(measure: AcidMeasure, blend: Blend, sign: 1 | -1): Map<string, Oil> {
  return lotsOf(blend, (one) => {
    const acids = Object.entries(one.acids).map(([id, { low, high }]) => {
      return { id, low, high, share: low, weight: sign * (measure.weights[id]?.weight ?? NaN) }
    })
    for (const acid of acids.toSorted((a, b) => a.weight - b.weight)) {
      const sum = acids.reduce((total, { share }) => total + share, 0)
      acid.share = Math.min(acid.high, acid.low + 100 - sum)
    }
    const unsaponifiableGPerKg = sign === 1 ? 0 : one.unsaponifiableGPerKg.high
    return oilOfLot(one, {
      acids: Float64Array.from(acids, ({ share }) => share),
      unsaponifiableGPerKg,
    })
  })
}
