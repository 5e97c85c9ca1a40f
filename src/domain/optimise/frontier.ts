import { CORNER_TOLERANCE, type Size, sizeOf, step } from './corners'
import type { Corner } from './region'

/** Which way of each axis is wanted. */
export type Wanted = readonly ['more' | 'less', 'more' | 'less']

/**
 * The corners of a region that nothing beats on both axes, in order along the edge. `corners` run
 * counter-clockwise as `attainableRegion` gives them. One corner means that a single blend is best on
 * both axes; between two neighbours every point of the edge is on the frontier as well.
 */
export function frontierOf(corners: readonly Corner[], wanted: Wanted): Corner[] {
  const size = sizeOf(corners)
  return corners
    .filter((corner) => !corners.some((other) => dominates(other, corner, wanted, size)))
    .toSorted((a, b) => a.x - b.x)
}

/** Whether one corner is at least as good on both axes and better on one, beyond what is noise. */
function dominates(a: Corner, b: Corner, wanted: Wanted, size: Size): boolean {
  const [dx, dy] = step(b, a, size)
  const [across, up] = [gain(dx, wanted[0]), gain(dy, wanted[1])]
  const noWorse = across >= -CORNER_TOLERANCE && up >= -CORNER_TOLERANCE
  return noWorse && (across > CORNER_TOLERANCE || up > CORNER_TOLERANCE)
}

const gain = (difference: number, wanted: 'more' | 'less') =>
  wanted === 'more' ? difference : -difference
