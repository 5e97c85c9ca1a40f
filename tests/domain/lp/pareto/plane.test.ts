import { describe, expect, test } from 'vitest'
import { exactDot, orthogonalTo } from '../../../../src/domain/lp/pareto/exact'
import { type Generator, generatorOf, Plane } from '../../../../src/domain/lp/pareto/plane'
import { Random } from '../../../generator/random'
import { gaussian } from './faults'

/** Sizes of what makes simplices flat and points nearly coplanar, from none to the grid's spacing. */
const SIZES = [1, 1e-2, 1e-4, 1e-6, 1e-9, 1e-12, 1e-15, 0] as const

/** Points whose simplex is as flat as `size`, the last one as near to its plane as `nearness`. */
function nearlyCoplanar(random: Random, dimensions: number, size: number, nearness: number) {
  const corners = Array.from({ length: dimensions }, () =>
    Array.from({ length: dimensions }, () => random.next()),
  )
  const mixtures = Array.from({ length: 2 }, () => mixture(random, corners))
  const last = (mixtures[0] ?? []).map((one) => one + size * gaussian(random))
  const on = [...corners.slice(0, -1), last]
  const near = mixture(random, on).map((one) => one + nearness * gaussian(random))
  const inner = (mixtures[1] ?? []).map((one) => one + gaussian(random))
  return { on: on.map(point), near: point(near), inner: point(inner) }
}

function mixture(random: Random, points: readonly (readonly number[])[]): number[] {
  const parts = points.map(() => gaussian(random))
  const total = parts.reduce((sum, part) => sum + part, 0)
  return (points[0] ?? []).map((_, i) =>
    points.reduce((sum, one, k) => sum + ((parts[k] ?? NaN) / total) * (one[i] ?? NaN), 0),
  )
}

function point(place: readonly number[]): Generator {
  return generatorOf(Float64Array.of(1, ...place))
}

/** On which side of the plane through `on` a point lies, by determinants alone: the sign of `inner` is 1. */
function exactSide(on: readonly Generator[], point: Generator, inner: Generator): number {
  const [origin, ...others] = on.map(({ integers }) => integers.slice(1))
  const ways = others.map((one) => one.map((value, i) => value - (origin?.[i] ?? 0n)))
  const normal = orthogonalTo(ways)
  const depth = ({ integers }: Generator) =>
    exactDot(
      normal,
      integers.slice(1).map((value, i) => value - (origin?.[i] ?? 0n)),
    )
  return sign(depth(point)) * sign(depth(inner))
}

function sign(value: bigint): number {
  return value > 0n ? 1 : value < 0n ? -1 : 0
}

describe('the side of a plane', () => {
  test.each([2, 3, 4])('is never wrong in %i dimensions, however flat and near', (dimensions) => {
    const random = new Random(dimensions)
    let doubtful = 0
    for (const size of SIZES.slice(0, -1)) {
      for (const nearness of SIZES) {
        for (let round = 0; round < 40; round++) {
          const { on, near, inner } = nearlyCoplanar(random, dimensions, size, nearness)
          if (exactSide(on, inner, inner) === 0) continue
          const plane = Plane.through(on, inner)
          expect(Math.sign(plane.sideOf(near))).toBe(exactSide(on, near, inner))
          if (Math.abs(plane.depthOf(near)) < 1e-11) doubtful++
        }
      }
    }
    expect(doubtful).toBeGreaterThan(200)
  })

  test('has a normal of length 1 and a depth in the units of the coordinates', () => {
    const on = [point([0, 0, 2]), point([1, 0, 2]), point([0, 1, 2])]
    const plane = Plane.through(on, point([0, 0, 5]))
    expect([...plane.vector]).toEqual([-2, 0, 0, 1])
    expect(plane.depthOf(point([7, 7, 3.5]))).toBe(1.5)
  })

  test('at infinity is where only directions are', () => {
    const [x, y] = [generatorOf(Float64Array.of(0, 1, 0)), generatorOf(Float64Array.of(0, 0, 1))]
    expect(Plane.through([x, y], point([0, 0])).isAtInfinity).toBe(true)
    const level = Plane.through([point([3, 4]), x], y)
    expect(level.isAtInfinity).toBe(false)
    expect([...level.vector].map(Math.abs)).toEqual([4, 0, 1])
  })
})
