import type { BlendSpace } from '../space/blend-space'
import type { Axes, Corner } from './region'
import { surfaceOf } from '../pareto/blend-surface'

/**
 * All that the shelf can reach on two measures with every other limit of the brief kept: the exact
 * corners of a convex region, counter-clockwise, each with a blend. Wishes on the two measures
 * themselves are left out, so that the region shows what lies around them. One corner means a single
 * point, two a line; none means that no blend keeps the rest of the brief.
 */
export function attainableRegion(space: BlendSpace, axes: Axes): Corner[] {
  const surface = surfaceOf(
    space,
    axes.map((measure) => ({ measure, wanted: 'more' })),
    { wholeHull: true, withoutWishesOnAxes: true },
  )
  if (surface.status === 'infeasible') return []
  return surface.vertices.map(({ measures, blend }) => ({
    x: measures[axes[0]] ?? NaN,
    y: measures[axes[1]] ?? NaN,
    blend,
  }))
}
