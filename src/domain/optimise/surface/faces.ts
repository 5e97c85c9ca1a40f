import type { Growth } from './grow'
import type { MergedFacet } from './merged'
import { sum, unit } from './vectors'

/** A face of a hull. */
export interface HullFace {
  /** Numbers of the hull's extreme points on it, rising. */
  readonly points: readonly number[]
  /** A plane that touches the hull in this face: a facet's own, else the mean of those around it. */
  readonly plane: Float64Array
}

/**
 * The extreme points of a hull, rising, each with a plane that touches the hull in it alone: the mean of
 * the facets it lies on. A point is extreme if nothing else lies on all of these.
 */
export function extremePoints(
  facets: readonly MergedFacet[],
  { solutions }: Growth,
): Map<number, Float64Array> {
  const around = solutions.map((): MergedFacet[] => [])
  for (const facet of facets) for (const id of facet.on) around[id]?.push(facet)
  const extreme = new Map<number, Float64Array>()
  around.forEach((facets, id) => {
    if (solutions[id] === null || facets.length === 0) return
    const shared = facets.map(({ on }) => on).reduce(common)
    if (shared.length === 1) extreme.set(id, meanPlane(facets))
  })
  return extreme
}

/** The proved facets of a hull. */
export function provedFacets(
  facets: readonly MergedFacet[],
  extreme: ReadonlySet<number>,
): HullFace[] {
  return facets
    .filter(({ proved }) => proved)
    .map(({ on, plane }) => ({ points: on.filter((id) => extreme.has(id)), plane }))
}

/**
 * The largest bounded faces of a hull with directions. Most are facets; where all facets are
 * unbounded, a polygon, an edge or a point between them may be as large as it gets. Of a hull that
 * is not complete only proved facets are given.
 */
export function boundedFaces(
  facets: readonly MergedFacet[],
  extreme: ReadonlySet<number>,
  { solutions, complete }: Growth,
): HullFace[] {
  const isBounded = (on: readonly number[]) => on.every((id) => solutions[id] !== null)
  const bounded = facets.filter(({ on }) => isBounded(on))
  const endless = facets.filter(({ on }) => !isBounded(on))
  const whole = provedFacets(bounded, extreme)
  if (!complete) return whole
  const thin = endless
    .flatMap((facet) => boundedWithin(facet, facet.on, isBounded))
    .map((on) => ({
      points: on.filter((id) => extreme.has(id)),
      plane: meanPlane(facets.filter((facet) => on.every((id) => facet.on.includes(id)))),
    }))
  return largest([...whole, ...thin])
}

/** The bounded faces of an unbounded face of a facet that lie directly below unbounded ones. */
function boundedWithin(
  facet: MergedFacet,
  face: readonly number[],
  bounded: (on: readonly number[]) => boolean,
  seen = new Set<string>(),
): (readonly number[])[] {
  return [...facet.neighbours].flatMap((neighbour) => {
    const part = common(face, neighbour.on)
    const key = part.join()
    if (part.length === 0 || part.length === face.length || seen.has(key)) return []
    seen.add(key)
    return bounded(part) ? [part] : boundedWithin(facet, part, bounded, seen)
  })
}

/** Faces that are part of no other. */
function largest(faces: readonly HullFace[]): HullFace[] {
  const kept: HullFace[] = []
  const at = new Map<number, HullFace[]>()
  for (const face of faces.toSorted((a, b) => b.points.length - a.points.length)) {
    const [first] = face.points
    if (first === undefined) continue
    const rivals = at.get(first) ?? []
    if (rivals.some(({ points }) => face.points.every((id) => points.includes(id)))) continue
    kept.push(face)
    for (const id of face.points) at.set(id, [...(at.get(id) ?? []), face])
  }
  return kept
}

function meanPlane(facets: readonly MergedFacet[]): Float64Array {
  const planes = facets.map(({ plane }) => plane)
  return unit(sum(planes, planes[0]?.length ?? 0))
}

/** What two rising lists share, rising. */
function common(one: readonly number[], other: readonly number[]): number[] {
  return one.filter((id) => other.includes(id))
}
