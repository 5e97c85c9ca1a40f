import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { type Blend, totalChange } from '../../../../src/domain/blend/blend'
import { barDistance } from '../../../../src/domain/blend/compare'
import { blendValues } from '../../../../src/domain/blend/values'
import { distance, TIES_PER_POINT } from '../../../../src/domain/optimise/studies/like'
import type { StudyResult, WithoutStudy } from '../../../../src/domain/optimise/studies/question'
import { oneStepStudy } from '../../../../src/domain/optimise/studies/study'
import { libraryOfValues } from '../../blend/stub-library'
import { first, KITCHEN, PRICES, resultsOf, SHELF, WITH_PALM } from './bases'

const NO_PALM: WithoutStudy = {
  kind: 'without',
  base: WITH_PALM,
  prices: PRICES,
  oil: 'palm',
  candidates: Object.keys(SHELF.oils),
  most: 5,
}
const oilsOf = ({ role }: StudyResult) => (role.kind === 'replaces' ? role.oils : [])
const countOf = (count: number) => (result: StudyResult) => oilsOf(result).length === count

describe('without palm', () => {
  const results = resultsOf(oneStepStudy(SHELF, NO_PALM, library))

  test('every result is free of palm and only its replacements rise', () => {
    for (const result of results) {
      expect(result.blend).not.toHaveProperty('palm')
      for (const [oil, share] of Object.entries(result.blend)) {
        if (oilsOf(result).includes(oil)) continue
        expect(share).toBeLessThanOrEqual((WITH_PALM[oil] ?? 0) + 1e-6)
      }
    }
  })

  test('single oils and pairs come ranked together by how far the bar and the oils move', () => {
    const distances = results.map(distance)
    expect(distances).toEqual(distances.toSorted((a, b) => a - b))
    expect(results.filter(countOf(1)).length).toBeGreaterThan(0)
    expect(results.filter(countOf(2))).toHaveLength(5)
  })

  test('the best single oil moves the bar no further than a plain swap for any oil with room', () => {
    const base = blendValues(library, PRICES, WITH_PALM)
    const best = first(results.filter(countOf(1)))
    for (const oil of NO_PALM.candidates) {
      const { max = 100 } = SHELF.oils[oil] ?? {}
      const swap = swapped(WITH_PALM, 'palm', oil)
      if ((swap[oil] ?? 0) > max) continue
      const moved = barDistance(library.measures, blendValues(library, PRICES, swap), base)
      const whole = moved + TIES_PER_POINT * totalChange(WITH_PALM, swap)
      expect(distance(best)).toBeLessThanOrEqual(whole + 1e-6)
    }
  })

  test('tells how far each bar moved, reckoned from the oils alone', () => {
    const base = blendValues(library, PRICES, WITH_PALM)
    for (const { blend, movedTies, changePoints } of results) {
      const values = blendValues(library, PRICES, blend)
      expect(movedTies).toBeCloseTo(barDistance(library.measures, values, base), 9)
      expect(changePoints).toBeCloseTo(totalChange(WITH_PALM, blend), 9)
    }
  })
})

test('the whole library may stand in, and oils without a price are named', () => {
  const candidates = [...library.oils.keys()].filter((oil) => oil !== 'palm')
  const results = resultsOf(oneStepStudy(SHELF, { ...NO_PALM, candidates }, library))
  expect(results.filter(countOf(1))).toHaveLength(5)
  expect(results.filter(countOf(2))).toHaveLength(5)
  for (const { blend, unpriced, measures } of results) {
    expect(unpriced).toEqual(Object.keys(blend).filter((oil) => !(oil in PRICES)))
    expect('cost' in measures).toBe(unpriced.length === 0)
  }
  // Fats of the same acids are nearest to palm: palm olein and tallow among the first, by common practice.
  const singles = results.filter(countOf(1)).flatMap(oilsOf)
  expect(singles).toContain('palm-olein')
})

test('an oil of equal value takes the place without moving the bar at all', () => {
  // By hand: b and c stand for a at 50; a pair of d and e can only stand between 30 and 70.
  const stub = libraryOfValues({
    a: { hardness: 50 },
    b: { hardness: 50 },
    d: { hardness: 30 },
    e: { hardness: 70 },
  })
  const brief = { oils: { b: {}, d: {}, e: {} }, groups: [], measures: {}, goal: SHELF.goal }
  const question: WithoutStudy = {
    kind: 'without',
    base: { a: 40, b: 60 },
    prices: {},
    oil: 'a',
    candidates: ['b', 'd', 'e'],
    most: 3,
  }
  const answer = oneStepStudy({ ...brief, goal: { maximise: 'hardness' } }, question, stub)
  const results = resultsOf(answer)
  expect(oilsOf(first(results))).toEqual(['b'])
  expect(first(results).movedTies).toBeCloseTo(0, 9)
  expect(first(results).blend).toEqual({ b: 100 })
  // 40 of a becomes 20 of d and 20 of e: (20 × 30 + 20 × 70) / 40 = 50.
  const pair = results.find((result) => oilsOf(result).join() === 'd,e')
  expect(pair?.blend.d).toBeCloseTo(20, 6)
  expect(pair?.movedTies).toBeCloseTo(0, 6)
})

test('an oil with a limit on the shelf rises no further than that', () => {
  const results = resultsOf(
    oneStepStudy(SHELF, { ...NO_PALM, candidates: ['cocoa-butter', 'shea'], most: 3 }, library),
  )
  for (const { blend } of results) expect(blend['cocoa-butter'] ?? 0).toBeLessThanOrEqual(15 + 1e-6)
})

test('where nothing has room to take the place, that is told', () => {
  const question = { ...NO_PALM, base: KITCHEN, oil: 'coconut', candidates: ['castor'] }
  // Castor may take at most 8 % and coconut leaves 28.
  expect(oneStepStudy(SHELF, question, library)).toMatchObject({
    status: 'none',
    reason: { kind: 'no room' },
  })
})

function swapped(blend: Blend, from: string, to: string): Blend {
  const { [from]: share = 0, ...rest } = blend
  return { ...rest, [to]: (rest[to] ?? 0) + share }
}
