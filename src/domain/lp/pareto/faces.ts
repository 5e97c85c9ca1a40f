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
  const whole = provedFacets(
    facets.filter(({ on }) => isBounded(on)),
    extreme,
  )
  if (!complete) return whole
  const thin = facets
    .filter(({ on }) => !isBounded(on))
    .flatMap((facet) => boundedWithin(facet, facet.on, isBounded))
    .map((on) => on.filter((id) => extreme.has(id)))
  const within = whole.map(({ points }) => points)
  const lone = largest(thin, within).map((points) => {
    const around = facets.filter(({ on }) => points.every((id) => on.includes(id)))
    return { points, plane: meanPlane(around) }
  })
  return [...whole, ...lone]
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

/** Those of some sets that are part of no other, nor of any set of a second list. */
function largest(
  sets: readonly (readonly number[])[],
  others: readonly (readonly number[])[],
): (readonly number[])[] {
  const containing = new Map<number, (readonly number[])[]>()
  const enter = (set: readonly number[]) => {
    for (const id of set) {
      const known = containing.get(id)
      if (known) known.push(set)
      else containing.set(id, [set])
    }
  }
  others.forEach(enter)
  return sets
    .toSorted((a, b) => b.length - a.length)
    .filter((set) => {
      const [first] = set
      const rivals = first === undefined ? [[]] : (containing.get(first) ?? [])
      if (rivals.some((rival) => set.every((id) => rival.includes(id)))) return false
      enter(set)
      return true
    })
}

function meanPlane(facets: readonly MergedFacet[]): Float64Array {
  const planes = facets.map(({ plane }) => plane)
  return unit(sum(planes, planes[0]?.length ?? 0))
}

/** What two rising lists share, rising. */
function common(one: readonly number[], other: readonly number[]): number[] {
  return one.filter((id) => other.includes(id))
}
