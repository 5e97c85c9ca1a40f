/** Something that has a place in the plane of two scaled objectives. */
export interface Placed {
  readonly place: PlanePoint
}
export type PlanePoint = readonly [number, number]

/**
 * A convex ring of places without repeats and without those that lie on the edge between their
 * neighbours, to a tolerance. What is left may be two places or one.
 */
export function withoutMiddles<T extends Placed>(ring: readonly T[], tolerance: number): T[] {
  const kept = [...ring]
  for (let k = 0; k < kept.length && kept.length > 1; k++) {
    const [before, here, after] = [kept.at(k - 1), kept[k], kept[(k + 1) % kept.length]]
    if (!before || !here || !after) break
    if (distanceToEdge(here.place, before.place, after.place) > tolerance) continue
    kept.splice(k, 1)
    k = -1 // its neighbours have new neighbours: look at all again
  }
  return kept
}

/** The way from one place to another. */
export function step([fromX, fromY]: PlanePoint, [toX, toY]: PlanePoint): PlanePoint {
  return [toX - fromX, toY - fromY]
}

/** Outward direction of length 1 of an edge walked counter-clockwise; (0, 0) of a point. */
export function outward(from: PlanePoint, to: PlanePoint): PlanePoint {
  const [dx, dy] = step(from, to)
  const size = Math.hypot(dx, dy)
  return size > 0 ? [dy / size, -dx / size] : [0, 0]
}

function distanceToEdge(place: PlanePoint, from: PlanePoint, to: PlanePoint): number {
  const [edgeX, edgeY] = step(from, to)
  const [x, y] = step(from, place)
  const squared = edgeX * edgeX + edgeY * edgeY
  const along = squared > 0 ? Math.min(1, Math.max(0, (x * edgeX + y * edgeY) / squared)) : 0
  return Math.hypot(x - along * edgeX, y - along * edgeY)
}
