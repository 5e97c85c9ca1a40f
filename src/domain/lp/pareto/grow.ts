import { type Facet, type Hull, isOn } from './hull'
import type { ImageProgram, Support } from './image-program'
import { dot } from './vectors'

/**
 * What a caller may want to hear of, or stop, while a surface of three or four objectives grows; two are
 * done in one go.
 */
export interface Watch {
  /** Called before every solve. */
  readonly onProgress?: ((progress: Progress) => void) | undefined
  /** Asked before every solve; if so, what is known by then is returned. */
  readonly shouldStop?: (() => boolean) | undefined
}

/** How far a surface has grown. */
export interface Progress {
  /** Points found so far. */
  readonly points: number
  /** Facets proved to have nothing beyond them, and facets that are not yet. */
  readonly proved: number
  readonly open: number
}

/** How the hull's coordinates stand to the scaled objectives: a flat image has a hull of its own. */
export interface View {
  /** Weights of the scaled objectives whose sum grows along a plane's inward normal. */
  readonly weightsOf: (plane: Float64Array) => Float64Array
  /** A support's generator in the hull's coordinates. */
  readonly generatorOf: (support: Support) => Float64Array
}

/** A hull of points of the image, with the solution behind each of its generators. */
export interface Growth {
  readonly hull: Hull
  readonly solutions: (Float64Array | null)[]
  /** Facets beyond which the image does not reach. */
  readonly proved: Set<Facet>
  /** Whether all facets are proved: then the hull is all there is. */
  readonly complete: boolean
}

/**
 * Inner approximation. The hull of the points found so far lies within the image; each of its facets
 * is tested by one program with the facet's normal for weights. Either no point of the image lies
 * beyond the facet, which proves it for good, or the point found joins the hull. So a surface of V
 * points and F facets takes V + F programs and may be stopped at any time: all points are then on
 * the image's boundary and the proved facets are facets of it.
 *
 * Sources: L. Csirmaz, Computational Optimization and Applications 63 (2016) 45-67; geometrically the
 * dual of M. Ehrgott, A. Löhne, L. Shao, Journal of Global Optimization 52 (2012) 757-778.
 */
export function grow(
  hull: Hull,
  solutions: (Float64Array | null)[],
  program: ImageProgram,
  view: View,
  tolerance: number,
  watch: Watch,
): Growth {
  const proved = new Set<Facet>()
  const growth: Growth = { hull, solutions, proved, complete: false }
  const open = [...hull.facets]
  for (let facet = open.pop(); facet; facet = open.pop()) {
    if (facet.outgrown) continue
    if (isSettled(facet, growth, tolerance)) {
      proved.add(facet)
      continue
    }
    watch.onProgress?.(progressOf(growth))
    if (watch.shouldStop?.()) return growth
    const support = program.support(view.weightsOf(facet.plane.vector))
    const generator = view.generatorOf(support)
    if (dot(facet.plane.vector, generator) >= -tolerance) proved.add(facet)
    else {
      solutions.push(support.x)
      open.push(...hull.add(generator))
    }
  }
  return { ...growth, complete: true }
}

function progressOf({ hull, solutions, proved }: Growth): Progress {
  const points = solutions.filter((x) => x !== null).length
  return { points, proved: proved.size, open: hull.facets.length - proved.size }
}

/** Whether a facet needs no test: it is at infinity, or part of the face a proved neighbour is of. */
function isSettled(facet: Facet, { hull, proved }: Growth, tolerance: number): boolean {
  if (facet.plane.isAtInfinity) return true
  return facet.neighbours.some(
    (neighbour) =>
      proved.has(neighbour) &&
      !neighbour.plane.isAtInfinity &&
      facet.on.every((id) => isOn(hull, neighbour, id, tolerance)),
  )
}
