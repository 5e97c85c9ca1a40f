import type { Growth } from './grow'
import { type Facet, isOn } from './hull'

/** A facet of a hull with all its generators: a polygon in three dimensions, a polytope in four. */
export interface MergedFacet {
  readonly plane: Float64Array
  /** Numbers of all generators on it, rising. */
  readonly on: readonly number[]
  readonly neighbours: ReadonlySet<MergedFacet>
  /** Whether nothing lies beyond it. */
  readonly proved: boolean
}

interface OwnMergedFacet extends MergedFacet {
  readonly neighbours: Set<OwnMergedFacet>
  proved: boolean
}

/**
 * Puts coplanar simplices together. The best spread one not yet taken gives its plane to a facet, which
 * takes in the simplices around it while all their generators are within `tolerance` of that plane. So
 * slivers, whose own planes mean little, go to a neighbour. Facets at infinity are left out.
 */
export function mergedFacets({ hull, proved }: Growth, tolerance: number): MergedFacet[] {
  const simplices = hull.facets.filter(({ plane }) => !plane.isAtInfinity)
  const used = [...new Set(simplices.flatMap(({ on }) => on))].sort((a, b) => a - b)
  const homes = new Map<Facet, OwnMergedFacet>()
  for (const seed of simplices.toSorted((a, b) => b.plane.volume - a.plane.volume)) {
    if (homes.has(seed)) continue
    const on = used.filter((id) => isOn(hull, seed, id, tolerance))
    const home = {
      plane: seed.plane.vector,
      on,
      neighbours: new Set<OwnMergedFacet>(),
      proved: true,
    }
    for (const simplex of coplanar(seed, new Set(on), homes)) {
      homes.set(simplex, home)
      home.proved &&= proved.has(simplex)
    }
  }
  for (const [simplex, home] of homes) {
    for (const neighbour of simplex.neighbours) {
      const other = homes.get(neighbour)
      if (other && other !== home) home.neighbours.add(other)
    }
  }
  return [...new Set(homes.values())]
}

/** The simplices connected with one that have all their generators on its plane and no home yet. */
function coplanar(
  seed: Facet,
  on: ReadonlySet<number>,
  homes: ReadonlyMap<Facet, MergedFacet>,
): ReadonlySet<Facet> {
  const found = new Set([seed])
  for (const simplex of found) {
    for (const next of simplex.neighbours) {
      if (next.plane.isAtInfinity || homes.has(next)) continue
      if (next.on.every((id) => on.has(id))) found.add(next)
    }
  }
  return found
}
