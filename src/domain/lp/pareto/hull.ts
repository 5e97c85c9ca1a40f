import { type Generator, generatorOf, Plane } from './plane'

/** A simplicial facet of a hull. */
export interface Facet {
  /** Its plane, with the hull inside. */
  readonly plane: Plane
  /** Numbers of its d generators. */
  readonly on: readonly number[]
  /** The facet across the ridge that lacks the generator at the same place in `on`. */
  readonly neighbours: readonly Facet[]
  /** Whether the hull has since grown beyond it. */
  readonly outgrown: boolean
}

interface OwnFacet extends Facet {
  readonly neighbours: OwnFacet[]
  outgrown: boolean
}

/** Facets that lack a neighbour across a ridge, by the ridge's key. */
type OpenRidges = Map<number, { readonly facet: OwnFacet; readonly place: number }>

/**
 * The convex hull of points and directions in one to four dimensions, grown one at a time. A hull with
 * directions has facets at infinity, on which only directions lie; so bounded and unbounded hulls are
 * one case.
 *
 * A new generator sees the facets that it lies outside of. They go, and each ridge between one of them
 * and a facet it does not see is joined to it by a new facet. What it sees is decided without rounding,
 * and a facet in whose plane it lies is not seen; so the facets always fit together, however many points
 * are in one plane or nearly so, and nothing need be shaken loose. Facets are simplices, coplanar ones
 * among them: `mergedFacets` puts these together.
 *
 * Sources: the beneath-beyond method, B. Grünbaum, Convex Polytopes (1967), section 5.2, as in K.L.
 * Clarkson, P.W. Shor, Discrete and Computational Geometry 4 (1989) 387-421; signs by doubles where
 * these suffice and exactly elsewhere, J.R. Shewchuk, Discrete and Computational Geometry 18 (1997)
 * 305-363.
 */
export class Hull {
  readonly generators: Generator[]
  #facets: OwnFacet[]

  /** Starts from d + 1 independent generators in d dimensions. */
  constructor(vectors: readonly Float64Array[]) {
    this.generators = vectors.map(generatorOf)
    const all = [...vectors.keys()]
    const facets = all.map((left) => this.#facetThrough(all.toSpliced(left, 1), left))
    facets.forEach(({ neighbours }, left) => neighbours.push(...facets.toSpliced(left, 1)))
    this.#facets = facets
  }

  get facets(): readonly Facet[] {
    return this.#facets
  }

  /** Least depth of a point or direction behind any facet: below 0 it lies outside. */
  depthOf(vector: Float64Array): number {
    const generator = generatorOf(vector)
    return Math.min(...this.#facets.map(({ plane }) => plane.depthOf(generator)))
  }

  /** Takes in a point or direction and returns the facets that arose: none if it lies within. */
  add(vector: Float64Array): readonly Facet[] {
    const generator = generatorOf(vector)
    const id = this.generators.push(generator) - 1
    const seen = this.#facets.filter(({ plane }) => plane.sideOf(generator) < 0)
    for (const facet of seen) facet.outgrown = true
    const open: OpenRidges = new Map()
    const fresh: OwnFacet[] = []
    for (const facet of seen) {
      facet.neighbours.forEach((behind, place) => {
        if (!behind.outgrown) fresh.push(this.#join(id, facet, place, behind, open))
      })
    }
    this.#facets = this.#facets.filter(({ outgrown }) => !outgrown)
    this.#facets.push(...fresh)
    return fresh
  }

  /** Joins a generator to the ridge between a facet it sees and one behind, in place of the former. */
  #join(id: number, seen: OwnFacet, place: number, behind: OwnFacet, open: OpenRidges): OwnFacet {
    const facet = this.#facetThrough(seen.on.with(place, id), seen.on[place] ?? NaN)
    facet.neighbours[place] = behind
    behind.neighbours[behind.neighbours.indexOf(seen)] = facet
    facet.on.forEach((left, k) => {
      if (left === id) return
      const ridge = ridgeKey(facet.on, left, id)
      const across = open.get(ridge)
      if (across) {
        facet.neighbours[k] = across.facet
        across.facet.neighbours[across.place] = facet
      } else open.set(ridge, { facet, place: k })
    })
    return facet
  }

  /** The facet on some generators that has another one inside. */
  #facetThrough(on: readonly number[], inner: number): OwnFacet {
    const plane = Plane.through(
      on.map((id) => this.#generator(id)),
      this.#generator(inner),
    )
    return { plane, on, neighbours: [], outgrown: false }
  }

  #generator(id: number): Generator {
    const generator = this.generators[id]
    if (!generator) throw new RangeError(`There is no generator ${id}`)
    return generator
  }
}

/** Whether a generator lies within a tolerance of a facet's plane. */
export function isOn(
  { generators }: Hull,
  { plane }: Facet,
  id: number,
  tolerance: number,
): boolean {
  const generator = generators[id]
  return generator !== undefined && Math.abs(plane.depthOf(generator)) <= tolerance
}

/** More generators than any hull here has. */
const MOST_GENERATORS = 2 ** 24

/**
 * One number for the generators of a facet without two of them. In four dimensions at most two are
 * left, so their numbers side by side are still exact.
 */
function ridgeKey(on: readonly number[], left: number, apex: number): number {
  let least = MOST_GENERATORS
  let most = 0
  for (const id of on) {
    if (id === left || id === apex) continue
    least = Math.min(least, id)
    most = Math.max(most, id)
  }
  return least * MOST_GENERATORS + most
}
