import { expect, test } from 'vitest'
import { edgeRings } from '../../src/charts/ruled-edge'
import type { RuledTerrain } from '../../src/domain/optimise/map/terrain-ruled'

/** A terrain one unit apart from 0 on, drawn as rows from the top down: `#` has a blend. */
function land(rows: readonly string[], ends: RuledTerrain['ends'] = []): RuledTerrain {
  const upward = rows.toReversed()
  const isLand = upward.map((row) => [...row].map((sign) => sign === '#'))
  return {
    axes: ['hardness', 'lather'],
    x: isLand[0]?.map((_, column) => column) ?? [],
    y: isLand.map((_, row) => row),
    values: isLand.map((row) => row.map((one) => (one ? 1 : null))),
    states: isLand.map((row) => row.map((one) => (one ? 'exact' : 'none'))),
    gaps: isLand.map((row) => row.map((one) => (one ? 0 : null))),
    ends,
    inCells: false,
    stage: 'complete',
  }
}

const cornersOf = (terrain: RuledTerrain) =>
  edgeRings(terrain).map((ring) => ring.map(({ x, y }) => `${x} ${y}`).sort())

/** Twice the area within a ring, counter-clockwise positive, by the shoelace formula. */
function area(ring: readonly { x: number; y: number }[]): number {
  return ring.reduce((sum, { x, y }, at) => {
    const next = ring[(at + 1) % ring.length]
    return sum + (next ? x * next.y - next.x * y : 0)
  }, 0)
}

test('a single point is ringed half-way to its neighbours', () => {
  expect(cornersOf(land(['...', '.#.', '...']))).toEqual([['0.5 1', '1 0.5', '1 1.5', '1.5 1']])
})

test('the ring runs through the ends that are known', () => {
  const ends = [
    { along: 'x', row: 1, column: 1, at: 1.9, isExact: true },
    { along: 'y', row: 0, column: 1, at: 0.1, isExact: true },
  ] as const
  expect(cornersOf(land(['...', '.#.', '...'], ends))).toEqual([
    ['0.5 1', '1 0.1', '1 1.5', '1.9 1'],
  ])
})

test('two pieces have a ring each, and so has a hole, turned the other way', () => {
  expect(edgeRings(land(['#.#', '#.#']))).toHaveLength(2)
  const rings = edgeRings(land(['###', '#.#', '###']))
  expect(rings).toHaveLength(2)
  const [small = NaN, large = NaN] = rings.map(area).sort((a, b) => Math.abs(a) - Math.abs(b))
  // By hand: a diamond of half-diagonal 1/2, and the square of 2 by 2; twice the areas.
  expect([Math.abs(small), Math.abs(large)]).toEqual([1, 8])
  expect(Math.sign(small)).toBe(-Math.sign(large))
})

test('pieces that meet only across a corner stay apart', () => {
  expect(edgeRings(land(['.#', '#.']))).toHaveLength(2)
})

test('land on the grid’s border ends at its points', () => {
  const [ring = []] = edgeRings(land(['##', '##']))
  expect(Math.abs(area(ring)) / 2).toBe(1)
})

test('a grid without a blend has no edge', () => {
  expect(edgeRings(land(['..', '..']))).toEqual([])
})
