/** Dimensions in which a facet is a polygon. */
const SPACE = 3

type Points = readonly (readonly number[])[]

/** The corners of a face in order, given its normal. */
type Ordered = (corners: readonly number[], normal: readonly number[]) => readonly number[]

/**
 * Orders the corners of polygons in space around them, counter-clockwise seen from where the normal
 * points, from the least number on. In other dimensions, and of an edge, they are returned as given.
 */
export function aroundFaces(points: Points): Ordered {
  const spans = spansOf(points)
  return (corners, normal) => {
    if (normal.length !== SPACE || corners.length < SPACE) return corners
    const shadowOf = shadow(corners, points, normal, spans)
    const angles = new Map(
      corners.map((corner) => {
        const [x, y] = shadowOf(corner)
        return [corner, Math.atan2(y, x)]
      }),
    )
    const ring = corners.toSorted((a, b) => (angles.get(a) ?? NaN) - (angles.get(b) ?? NaN))
    const start = ring.indexOf(Math.min(...ring))
    return [...ring.slice(start), ...ring.slice(0, start)]
  }
}

/** How far the points are apart along each axis. */
function spansOf(points: Points): number[] {
  return Array.from({ length: SPACE }, (_, axis) => {
    const values = points.map((point) => point[axis] ?? NaN)
    return Math.max(...values) - Math.min(...values)
  })
}

/**
 * Places of a polygon's corners around its middle as the axis it faces most sees them, from the side its
 * normal points to. Each axis is measured by its span, so that neither money nor points count for more.
 */
function shadow(
  corners: readonly number[],
  points: Points,
  normal: readonly number[],
  spans: readonly number[],
): (corner: number) => readonly [number, number] {
  const tilts = normal.map((slope, axis) => slope * (spans[axis] ?? NaN))
  const facing = tilts.reduce(
    (most, tilt, axis) => (Math.abs(tilt) > Math.abs(tilts[most] ?? NaN) ? axis : most),
    0,
  )
  const side = (tilts[facing] ?? NaN) < 0 ? -1 : 1
  const place = (axis: number) => {
    const sum = corners.reduce((total, corner) => total + (points[corner]?.[axis] ?? NaN), 0)
    const middle = sum / corners.length
    return (corner: number) => ((points[corner]?.[axis] ?? NaN) - middle) / (spans[axis] ?? NaN)
  }
  const [x, y] = [place((facing + 1) % SPACE), place((facing + 2) % SPACE)]
  return (corner) => [x(corner), side * y(corner)]
}
