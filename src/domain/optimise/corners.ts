import type { Corner } from './region'
import { CHECK_TOLERANCE } from './verify'

/**
 * How far a point must lie outside an edge to count as a new corner, as a fraction of the region's
 * size. Solvers keep rows to about 1e-8 of their size, so a tenfold margin separates corners from noise.
 */
export const CORNER_TOLERANCE = 1e-7

/** Width and height of a region in the units of its measures. */
export interface Size {
  readonly width: number
  readonly height: number
}

/**
 * The size of what some corners span. A side too narrow for an answer to tell its ends apart counts as
 * 1, so that the noise of a measure all blends share is never blown up into a region.
 */
export function sizeOf(corners: readonly Corner[]): Size {
  return { width: span(corners.map(({ x }) => x)), height: span(corners.map(({ y }) => y)) }
}

function span(values: readonly number[]): number {
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const narrow = CHECK_TOLERANCE * Math.max(1, Math.abs(most))
  return most - least > narrow ? most - least : 1
}

/** A ring of corners without those that lie on the edge between their neighbours, repeats among them. */
export function withoutMiddles(ring: readonly Corner[], size: Size): Corner[] {
  const kept = [...ring]
  const isMiddle = (corner: Corner, i: number) => {
    const [before, after] = [kept.at(i - 1) ?? corner, kept[(i + 1) % kept.length] ?? corner]
    return distanceToEdge(corner, before, after, size) <= CORNER_TOLERANCE
  }
  for (let i = 0; kept.length > 1 && i >= 0;) {
    i = kept.findIndex(isMiddle)
    if (i >= 0) kept.splice(i, 1)
  }
  return kept
}

/** How far a corner lies from the edge between two others, as a fraction of the region's size. */
function distanceToEdge(corner: Corner, from: Corner, to: Corner, size: Size): number {
  const [edgeX, edgeY] = step(from, to, size)
  const [x, y] = step(from, corner, size)
  const lengthSquared = edgeX * edgeX + edgeY * edgeY
  const along = lengthSquared > 0 ? (x * edgeX + y * edgeY) / lengthSquared : 0
  const nearest = Math.min(1, Math.max(0, along))
  return Math.hypot(x - nearest * edgeX, y - nearest * edgeY)
}

/** The way from one corner to another, as fractions of the region's width and height. */
export function step(from: Corner, to: Corner, { width, height }: Size): [number, number] {
  return [(to.x - from.x) / width, (to.y - from.y) / height]
}
