import { measureOf } from '../../blend/library'
import { type BlendSpace, negated } from '../space/blend-space'
import type { Axes } from './region'

/** The best of a measure over a grid of two others. */
export interface Terrain {
  readonly axes: Axes
  /** Values of the grid's columns and rows, in the axes' units, rising. */
  readonly x: readonly number[]
  readonly y: readonly number[]
  /** Best value at [row of y][column of x], in the measure's unit; null where no blend has both. */
  readonly values: readonly (readonly (number | null)[])[]
}

/**
 * The best value of a measure (least where less is better) at every point of a grid over two measures,
 * exact at each point, with all limits kept but the wishes on the two themselves. The grid is walked in
 * a serpentine, so that neighbours share a basis and most points cost a look instead of a solve.
 * The space's wishes on the axes are put back afterwards.
 */
export function terrainOver(
  space: BlendSpace,
  axes: Axes,
  value: string,
  x: readonly number[],
  y: readonly number[],
): Terrain {
  const { simplex, library } = space
  for (const axis of axes) space.hold(axis, {})
  const [across, up] = [space.rowOf(axes[0]), space.rowOf(axes[1])]
  const more = measureOf(library, value).better === 'more'
  const worth = space.perPercent(value)
  simplex.setCost(more ? negated(worth) : worth)
  const values = y.map((height, index) => {
    simplex.setRowBounds(up, height, height)
    const columns = index % 2 === 0 ? x.keys() : [...x.keys()].reverse()
    const found = new Array<number | null>(x.length).fill(null)
    for (const column of columns) {
      const at = x[column] ?? NaN
      simplex.setRowBounds(across, at, at)
      const outcome = simplex.solve()
      if (outcome.status === 'optimal')
        found[column] = more ? -outcome.objective : outcome.objective
    }
    return found
  })
  space.restore(axes[0])
  space.restore(axes[1])
  return { axes, x, y, values }
}
