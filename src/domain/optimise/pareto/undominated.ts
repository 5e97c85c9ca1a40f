/** A corner of a region, in the units of its two axes. */
interface Corner {
  readonly x: number
  readonly y: number
}

/** Which way of each axis is wanted. */
export type Wanted = readonly ['more' | 'less', 'more' | 'less']

/**
 * A gain smaller than this part of the region's size is noise: corners themselves are exact to a
 * hundredth of it.
 */
const NOISE = 1e-7

/** A side of a region narrower than this, in the measure's unit, has no ends to tell apart. */
const NARROW = 1e-6

/**
 * The corners of a region that nothing beats on both axes, in order along the edge. `corners` run
 * counter-clockwise as `attainableRegion` gives them. One corner means that a single blend is best on
 * both axes; between two neighbours every point of the edge is on the frontier as well.
 */
export function undominated<T extends Corner>(corners: readonly T[], wanted: Wanted): T[] {
  const width = span(corners.map(({ x }) => x))
  const height = span(corners.map(({ y }) => y))
  const gain = (a: Corner, b: Corner): [number, number] => [
    signed((a.x - b.x) / width, wanted[0]),
    signed((a.y - b.y) / height, wanted[1]),
  ]
  return corners
    .filter((corner) => !corners.some((other) => isBetter(gain(other, corner))))
    .toSorted((a, b) => a.x - b.x)
}

/** At least as good on both axes and better on one, beyond what is noise. */
function isBetter([across, up]: readonly [number, number]): boolean {
  return across >= -NOISE && up >= -NOISE && (across > NOISE || up > NOISE)
}

const signed = (difference: number, wanted: 'more' | 'less') =>
  wanted === 'more' ? difference : -difference

function span(values: readonly number[]): number {
  const [least, most] = [Math.min(...values), Math.max(...values)]
  return most - least > NARROW * Math.max(1, Math.abs(most)) ? most - least : 1
}
