import { describe, expect, test } from 'vitest'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { limitsOf } from '../../../../src/domain/optimise/brief/limits'
import { costCurve, type CurvePoint } from '../../../../src/domain/optimise/sensitivity/cost-curve'
import { randomCases } from './random-briefs'
import { bestValue, feasibleOnes, moved } from './reference'

const PER_KIND = 12
const SEED = 77
/** Difference of two goal values that is rounding, in their unit. */
const ROUNDING = 1e-7
/** How far a limit is moved to either side of its value, in its unit. */
const WIDTH = 12
/** Part of the way that is left out at the edge of what is within reach. */
const EDGE = 1e-4

const curves = feasibleOnes(randomCases(PER_KIND, SEED)).flatMap((one) => {
  const space = new BlendSpace(one.brief, one.library)
  return limitsOf(one.brief).map((limit) => {
    const [from, to] = [limit.value - WIDTH, limit.value + WIDTH]
    return { one, limit, from, to, points: costCurve(space, limit.path, from, to) }
  })
})

function valueAt(points: readonly CurvePoint[], at: number): number {
  const k = points.findIndex((point) => point.at >= at)
  const [before, after] = [points[k - 1], points[k]]
  if (!before || !after) return NaN
  return before.value + ((after.value - before.value) * (at - before.at)) / (after.at - before.at)
}

describe('the curve of the best goal value over one limit', () => {
  test('has bends in dozens of cases', () => {
    expect(curves.length).toBeGreaterThan(150)
    expect(curves.filter(({ points }) => points.length > 2).length).toBeGreaterThan(60)
  })

  test('is what HiGHS finds, between its points and beside them', () => {
    for (const { one, limit, points } of curves.filter(({ points }) => points.length > 1)) {
      const middles = points.slice(1).map(({ at }, k) => (at + (points[k]?.at ?? NaN)) / 2)
      const [first = NaN, last = NaN] = [points[0]?.at, points.at(-1)?.at]
      const ends = [first + EDGE * (last - first), last - EDGE * (last - first)]
      for (const at of [...middles, ...ends]) {
        const truth = bestValue(moved(one, limit.path, at)) ?? NaN
        const gap = Math.abs(valueAt(points, at) - truth)
        expect(gap, `${one.name} ${limit.path} ${at}`).toBeLessThan(ROUNDING)
      }
    }
  })

  test('rises in the limit without repeats, and each inner point is a bend', () => {
    for (const { one, limit, points } of curves) {
      for (let k = 1; k + 1 < points.length; k++) {
        const [a, b, c] = points.slice(k - 1, k + 2)
        if (!a || !b || !c) throw new Error('A point is missing')
        expect(b.at).toBeGreaterThan(a.at)
        expect(c.at).toBeGreaterThan(b.at)
        const [before, after] = [
          (b.value - a.value) / (b.at - a.at),
          (c.value - b.value) / (c.at - b.at),
        ]
        expect(Math.abs(after - before), `${one.name} ${limit.path}`).toBeGreaterThan(1e-9)
      }
    }
  })

  test('ends where asked, where a share ends, or where no blend is left', () => {
    for (const { one, limit, from, to, points } of curves) {
      const isShare = limit.kind !== 'measure'
      const [least, most] = isShare ? [Math.max(0, from), Math.min(100, to)] : [from, to]
      const [first, last] = [points[0], points.at(-1)]
      if (!first || !last) throw new Error(`${one.name} ${limit.path} has no curve`)
      for (const [end, asked, beyond] of [
        [first.at, least, first.at - WIDTH * EDGE],
        [last.at, most, last.at + WIDTH * EDGE],
      ] as const) {
        if (
          Math.abs(end - asked) < ROUNDING ||
          (limit.kind === 'group' && (beyond < 0 || beyond > 100))
        )
          continue
        expect(
          bestValue(moved(one, limit.path, beyond)),
          `${one.name} ${limit.path}`,
        ).toBeUndefined()
      }
    }
  })
})

test('a curve is empty where no blend keeps the limit anywhere on it', () => {
  const one = feasibleOnes(randomCases(PER_KIND, SEED)).find(
    ({ brief }) => brief.measures['m0']?.min,
  )
  if (!one) throw new Error('No case limits m0 from below')
  const space = new BlendSpace(one.brief, one.library)
  expect(costCurve(space, 'measures.m0.min', 200, 300)).toEqual([])
})
