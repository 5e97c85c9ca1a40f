import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { totalChange } from '../../../../src/domain/blend/blend'
import { blendValues } from '../../../../src/domain/blend/values'
import { distance } from '../../../../src/domain/optimise/studies/like'
import type { LikeStudy } from '../../../../src/domain/optimise/studies/question'
import { oneStepStudy } from '../../../../src/domain/optimise/studies/study'
import { breaches } from '../../../../src/domain/optimise/space/verify'
import { KITCHEN, ONE_TIE, PRICES, resultsOf, SHELF } from './bases'

const MORE: LikeStudy = {
  kind: 'like',
  base: KITCHEN,
  prices: PRICES,
  tolerances: ONE_TIE,
  keepWishes: false,
  stepPoints: 10,
  most: 4,
}

describe('more like this', () => {
  const results = resultsOf(oneStepStudy(SHELF, MORE, library))
  const base = blendValues(library, PRICES, KITCHEN)

  test('gives as many as asked, each with one oil a step away from the base', () => {
    expect(results).toHaveLength(4)
    for (const { blend, role } of results) {
      if (role.kind !== 'shift') throw new Error(role.kind)
      const moved = (blend[role.oil] ?? 0) - (KITCHEN[role.oil] ?? 0)
      expect(moved * Math.sign(role.points)).toBeGreaterThanOrEqual(10 - 1e-9)
    }
  })

  test('holds every measure of the bar within a tie', () => {
    for (const { measures } of results) {
      for (const [id, tie] of Object.entries(ONE_TIE))
        expect(Math.abs((measures[id] ?? NaN) - (base[id] ?? NaN))).toBeLessThanOrEqual(tie + 1e-6)
    }
  })

  test('gives blends that differ from each other by the step', () => {
    for (const [i, a] of results.entries())
      for (const b of results.slice(i + 1))
        expect(totalChange(a.blend, b.blend)).toBeGreaterThanOrEqual(10)
  })

  test('comes with the least moved first', () => {
    const distances = results.map(distance)
    expect(distances).toEqual(distances.toSorted((a, b) => a - b))
  })

  test('keeps the limits of the shelf', () => {
    for (const { blend } of results) expect(breaches(SHELF, blend, library)).toEqual([])
  })
})

test('no blend is given where no tolerance leaves room for the step', () => {
  const tight = Object.fromEntries(Object.keys(ONE_TIE).map((id) => [id, 0.01]))
  const answer = oneStepStudy(SHELF, { ...MORE, stepPoints: 25, tolerances: tight }, library)
  expect(answer).toMatchObject({ status: 'none', reason: { kind: 'nothing holds' } })
})
