import { describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import { formulate } from '../../src/domain/optimise/space/formulate'
import { isFeasible } from '../domain/optimise/infeasible/feasible'
import { undominated, type Wanted } from '../../src/domain/optimise/pareto/undominated'
import { solveAt } from '../../src/domain/optimise/solve/point'
import { withoutWishesOn } from '../../src/domain/optimise/brief/ranges'
import type { Axes, Corner } from '../../src/domain/optimise/map/region'
import { BlendSpace } from '../../src/domain/optimise/space/blend-space'
import { attainableRegion } from '../../src/domain/optimise/map/attainable-region'
import { highs } from '../domain/lp/solvers/loaded-highs'
import { sampleBriefs } from './briefs'
import { faults, valueOf } from './recheck'

const SEED = 20_263
const BRIEFS = 24
const DIRECTIONS = 200
/** As a fraction of the region's size; the search itself stops at 1e-7. */
const TOLERANCE = 1e-6

const PAIRS: readonly Axes[] = [
  ['hardness', 'lather'],
  ['mildness', 'lather'],
  ['conditioning', 'cost'],
  ['wear', 'keeping'],
  ['cost', 'foam-life'],
]
const WANTED: readonly Wanted[] = [
  ['more', 'more'],
  ['less', 'more'],
  ['less', 'less'],
  ['more', 'less'],
]

const regions = sampleBriefs(BRIEFS, SEED).map((brief, k) => {
  const axes = PAIRS[k % PAIRS.length] ?? (['hardness', 'lather'] as const)
  return { brief: withoutWishesOn(brief, axes), axes, corners: regionOf(brief, axes) }
})
const drawn = regions.filter(({ corners }) => corners.length > 0)

describe(`the regions of ${BRIEFS} random briefs`, () => {
  test('are there exactly where a blend keeps the rest of the brief', () => {
    for (const { brief, corners } of regions)
      expect(corners.length > 0).toBe(isFeasible(brief, library, highs))
    expect(drawn.length).toBeGreaterThan(BRIEFS / 2)
  })

  test('are convex and run counter-clockwise', () => {
    for (const { corners } of drawn.filter((one) => one.corners.length > 2)) {
      const { width, height } = sizeOf(corners)
      corners.forEach((corner, i) => {
        const [before, after] = [
          corners.at(i - 1) ?? corner,
          corners[(i + 1) % corners.length] ?? corner,
        ]
        const turn =
          (corner.x - before.x) * (after.y - corner.y) -
          (corner.y - before.y) * (after.x - corner.x)
        expect(turn / width / height).toBeGreaterThan(0)
      })
    }
  })

  test('have a blend at every corner that keeps the brief and comes to that corner', () => {
    for (const { brief, axes, corners } of drawn) {
      for (const { x, y, blend } of corners) {
        expect(faults(brief, blend)).toEqual([])
        expect([valueOf(brief, axes[0], blend), valueOf(brief, axes[1], blend)]).toEqual([
          expect.closeTo(x, 6),
          expect.closeTo(y, 6),
        ])
      }
    }
  })

  test(`leave nothing outside in ${DIRECTIONS} directions`, () => {
    for (const { brief, axes, corners } of drawn) {
      const size = sizeOf(corners)
      for (let k = 0; k < DIRECTIONS; k += 1) {
        const angle = (2 * Math.PI * (k + 0.37)) / DIRECTIONS
        const [dx, dy] = [Math.cos(angle) / size.width, Math.sin(angle) / size.height]
        const best = Math.max(...corners.map(({ x, y }) => dx * x + dy * y))
        expect(farthest(brief, axes, dx, dy) - best).toSatisfy(nearZero)
      }
    }
  })

  test('hold every random blend that keeps the brief', () => {
    for (const { brief, axes, corners } of drawn) {
      const [x, y] = middleOf(corners)
      const answer = solveAt(brief, { [axes[0]]: x, [axes[1]]: y }, library, highs)
      expect(answer.status).toBe('optimal')
    }
  })

  test('have a frontier that nothing beats, from one best end to the other', () => {
    for (const { corners } of drawn) {
      for (const wanted of WANTED) {
        const frontier = undominated(corners, wanted)
        const [across, up] = [best(corners, 'x', wanted[0]), best(corners, 'y', wanted[1])]
        const { width, height } = sizeOf(corners)
        expect(Math.abs(best(frontier, 'x', wanted[0]) - across) / width).toBeLessThan(TOLERANCE)
        expect(Math.abs(best(frontier, 'y', wanted[1]) - up) / height).toBeLessThan(TOLERANCE)
        for (const one of frontier)
          for (const other of corners) expect(beats(other, one, wanted, corners)).toBe(false)
      }
    }
  })
})

function regionOf(brief: Brief, axes: Axes): Corner[] {
  return attainableRegion(new BlendSpace(brief, library), axes)
}

/** How far blends reach in a direction, by one solve that the region's search has no part in. */
function farthest(brief: Brief, [across, up]: Axes, dx: number, dy: number): number {
  const length = Math.hypot(dx, dy)
  const away = Object.keys(brief.oils).map((oil) => {
    const all = { [oil]: 100 }
    const value = dx * valueOf(brief, across, all) + dy * valueOf(brief, up, all)
    return -value / length / 100
  })
  const outcome = highs({ ...formulate(brief, library, 'limits only'), cost: away })
  return outcome.status === 'optimal' ? -outcome.objective * length : NaN
}

function nearZero(value: number): boolean {
  return Math.abs(value) <= TOLERANCE
}

function middleOf(corners: readonly Corner[]): [number, number] {
  const mean = (values: number[]) => values.reduce((a, b) => a + b, 0) / values.length
  return [mean(corners.map(({ x }) => x)), mean(corners.map(({ y }) => y))]
}

function best(corners: readonly Corner[], axis: 'x' | 'y', wanted: 'more' | 'less'): number {
  const values = corners.map((corner) => corner[axis])
  return wanted === 'more' ? Math.max(...values) : Math.min(...values)
}

/** Whether one corner is clearly better on one axis and no worse on the other. */
function beats(one: Corner, other: Corner, wanted: Wanted, corners: readonly Corner[]): boolean {
  const { width, height } = sizeOf(corners)
  const across = ((one.x - other.x) / width) * (wanted[0] === 'more' ? 1 : -1)
  const up = ((one.y - other.y) / height) * (wanted[1] === 'more' ? 1 : -1)
  return (across > TOLERANCE && up >= 0) || (up > TOLERANCE && across >= 0)
}

/** The width and height of a region; 1 where it has none. */
function sizeOf(corners: readonly Corner[]): { width: number; height: number } {
  const span = (values: number[]) => {
    const wide = Math.max(...values) - Math.min(...values)
    return wide > TOLERANCE ? wide : 1
  }
  return { width: span(corners.map(({ x }) => x)), height: span(corners.map(({ y }) => y)) }
}
