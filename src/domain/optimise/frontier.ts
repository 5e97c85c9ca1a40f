import type { Corner } from './region'

/** Which way of each axis is wanted. */
export type Wanted = readonly ['more' | 'less', 'more' | 'less']

/**
 * The corners of a region that nothing beats on both axes, in order along the edge. `corners` run
 * counter-clockwise as `attainableRegion` gives them. One corner means that a single blend is best on
 * both axes; between two neighbours every point of the edge is on the frontier as well.
 */
export function frontierOf(corners: readonly Corner[], wanted: Wanted): Corner[] {
  const [sx, sy] = [sign(wanted[0]), sign(wanted[1])]
  return corners
    .filter((corner) => !corners.some((other) => dominates(other, corner, sx, sy)))
    .toSorted((a, b) => a.x - b.x)
}

const sign = (wanted: 'more' | 'less') => (wanted === 'more' ? 1 : -1)

/** Whether one corner is at least as good on both axes and better on one. */
function dominates(a: Corner, b: Corner, sx: number, sy: number): boolean {
  const [dx, dy] = [sx * (a.x - b.x), sy * (a.y - b.y)]
  return dx >= 0 && dy >= 0 && (dx > 0 || dy > 0)
}
