import { boundedFaces, extremePoints, provedFacets } from './faces'
import { Frame } from './frame'
import type { Growth, View, Watch } from './grow'
import type { ImageProgram } from './image-program'
import { mergedFacets } from './merged'
import { efficientView, upperImage } from './upper-image'
import { wholeImage } from './whole-image'

/** The corners and faces of an image, or of its efficient side; all weights in scaled objectives. */
export interface Outline {
  readonly corners: readonly Corner[]
  readonly faces: readonly Face[]
  /** Directions in which the efficient side has no end. */
  readonly rays: readonly Float64Array[]
  /** Dimension of the flat through all corners: 0 for a single one. */
  readonly dimension: number
  /** Whether that is all of them. */
  readonly complete: boolean
}

/** A corner, with weights for which it alone is least. */
export interface Corner {
  readonly x: Float64Array
  readonly weights: Float64Array
}

/** A face, with weights for which all of it is least. */
export interface Face {
  /** Places of its corners in the outline, rising. */
  readonly corners: readonly number[]
  readonly weights: Float64Array
}

/** The efficient side by inner approximation, for any number of objectives from two on. */
export function grownSide(program: ImageProgram, tolerance: number, watch: Watch): Outline {
  const growth = upperImage(program, tolerance, watch)
  const { hull, solutions, complete } = growth
  const given = 1 + program.objectives.length
  const rays = hull.generators
    .filter((_, id) => id >= given && solutions[id] === null)
    .map(({ vector }) => vector.slice(1))
  const outline = outlineOf(program, growth, efficientView, tolerance, boundedFaces)
  return { ...outline, rays, complete }
}

/** The whole of a bounded image by inner approximation. */
export function grownWhole(program: ImageProgram, tolerance: number, watch: Watch): Outline {
  const whole = wholeImage(program, tolerance, watch)
  if ('x' in whole) {
    const weights = new Float64Array(program.objectives.length)
    weights[0] = 1
    return { corners: [{ x: whole.x, weights }], faces: [], rays: [], dimension: 0, complete: true }
  }
  const { growth, view } = whole
  return {
    ...outlineOf(program, growth, view, tolerance, provedFacets),
    rays: [],
    complete: growth.complete,
  }
}

function outlineOf(
  program: ImageProgram,
  growth: Growth,
  { weightsOf }: View,
  tolerance: number,
  facesOf: typeof boundedFaces,
): Pick<Outline, 'corners' | 'faces' | 'dimension'> {
  const facets = mergedFacets(growth, tolerance)
  const extreme = extremePoints(facets, growth)
  const found = [...extreme].flatMap(([id, plane]) => {
    const x = growth.solutions[id]
    return x ? [{ id, x, weights: weightsOf(plane), order: orderOf(program, x, tolerance) }] : []
  })
  const corners = found.toSorted((a, b) => compare(a.order, b.order))
  const places = new Map(corners.map(({ id }, place) => [id, place]))
  const faces = facesOf(facets, new Set(extreme.keys()), growth).map(({ points, plane }) => ({
    corners: points.map((id) => places.get(id) ?? NaN).sort((a, b) => a - b),
    weights: weightsOf(plane),
  }))
  faces.sort((a, b) => compare(a.corners, b.corners))
  return { corners, faces, dimension: dimensionOf(corners, program, tolerance) }
}

function dimensionOf(corners: readonly Corner[], program: ImageProgram, tolerance: number): number {
  const points = corners.map(({ x }) => program.pointOf(x).generator)
  const frame = new Frame(1 + program.objectives.length)
  return Math.max(0, frame.addFarthest(points, tolerance).length - 1)
}

/** What corners are sorted by: their scaled image in whole tolerances, so that noise does not count. */
function orderOf(program: ImageProgram, x: Float64Array, tolerance: number): number[] {
  const { generator } = program.pointOf(x)
  return Array.from(generator, (one) => Math.round(one / tolerance))
}

/** Order of two lists by the first number in which they differ. */
function compare(a: readonly number[], b: readonly number[]): number {
  const differing = a.findIndex((one, k) => one !== b[k])
  return (a[differing] ?? 0) - (b[differing] ?? 0)
}
