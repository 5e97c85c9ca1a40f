import { AccuracyError } from '../simplex/simplex'
import { parametricCost } from '../simplex/parametric-cost'
import type { ImageProgram } from './image-program'
import type { Corner, Face, Outline } from './outline'
import { outward, type PlanePoint, type Placed, step, withoutMiddles } from './polygon'
import { sum, unit } from './vectors'

/** An objective and the way it is taken: 1 for the least of it, -1 for the most. */
type Aim = readonly [objective: 0 | 1, sign: 1 | -1]
type Met = Corner & Placed

/** The ends of the axes, counter-clockwise. `ImageProgram` leaves the solver at the last. */
const EAST: Aim = [0, -1]
const NORTH: Aim = [1, -1]
const WEST: Aim = [0, 1]
const SOUTH: Aim = [1, 1]

/**
 * The efficient side of two objectives in one parametric pass, its corners from the least of the first
 * to the least of the second. Expects both to have a least.
 */
export function passedSide(program: ImageProgram, tolerance: number): Outline {
  const met = withoutBeatenEnds(pass(program, SOUTH, WEST).reverse(), tolerance)
  const corners = withoutMiddles(met, tolerance)
  const [only] = corners
  const single = only && corners.length === 1
  const faces = single ? [{ corners: [0], weights: only.weights }] : edges(corners).slice(0, -1)
  return { corners, faces, rays: [], dimension: dimensionOf(corners), complete: true }
}

/**
 * The whole image of two objectives in four parametric passes, one for each quarter of its edge, its
 * corners counter-clockwise. Expects it to be bounded.
 */
export function passedWhole(program: ImageProgram, tolerance: number): Outline {
  const last = pass(program, SOUTH, EAST)
  const quarters = [
    pass(program, EAST, NORTH),
    pass(program, NORTH, WEST),
    pass(program, WEST, SOUTH),
  ]
  const ring = withoutMiddles([...quarters, last].flat(), tolerance)
  const dimension = dimensionOf(ring)
  if (ring.length > 2) {
    const faces = edges(ring)
    const corners = ring.map(({ x }, k) => ({ x, weights: meeting(faces.at(k - 1), faces[k]) }))
    return { corners, faces, rays: [], dimension, complete: true }
  }
  const corners = ring.map(({ x, place }, k) => ({ x, weights: away(ring[1 - k]?.place, place) }))
  const faces =
    corners.length > 1 ? corners.map(({ weights }, k) => ({ corners: [k], weights })) : []
  return { corners, faces, rays: [], dimension, complete: true }
}

/** Dimension of the flat through corners of which none is on the line between its neighbours. */
function dimensionOf(corners: readonly unknown[]): number {
  return Math.min(2, corners.length - 1)
}

/** The corners between the best by one aim and the best by another, in order. */
function pass(program: ImageProgram, from: Aim, to: Aim): Met[] {
  const [first, second] = [costOf(program, from), costOf(program, to)]
  const found = parametricCost(program.simplex, first, second)
  if (found.status !== 'complete') {
    throw new AccuracyError(`A pass between two bounded objectives ended as ${found.status}.`)
  }
  return found.corners.map((corner) => {
    const weight = (corner.from + corner.to) / 2
    const weights = new Float64Array(2)
    weights[from[0]] = from[1] * (1 - weight)
    weights[to[0]] = to[1] * weight
    const [, x = NaN, y = NaN] = program.pointOf(corner.x).generator
    return { x: corner.x, weights: unit(weights), place: [x, y] }
  })
}

function costOf({ objectives, scale }: ImageProgram, [objective, sign]: Aim): Float64Array {
  const factor = sign / (scale[objective] ?? NaN)
  return (objectives[objective] ?? new Float64Array()).map((one) => factor * one)
}

/** The corners of an efficient side without ends that a neighbour equals on one axis and betters on the other. */
function withoutBeatenEnds(corners: readonly Met[], tolerance: number): Met[] {
  const kept = [...corners]
  const near = (k: number, axis: 0 | 1) => {
    const [one, other] = [kept.at(k), kept.at(k < 0 ? k - 1 : k + 1)]
    return kept.length > 1 && one && other && other.place[axis] - one.place[axis] <= tolerance
  }
  while (near(0, 0)) kept.shift()
  while (near(-1, 1)) kept.pop()
  return kept
}

/** The edges from each corner of a ring to the next, the last back to the first. */
function edges(ring: readonly Placed[]): Face[] {
  return ring.map(({ place }, k) => {
    const next = (k + 1) % ring.length
    const [x, y] = outward(place, ring[next]?.place ?? place)
    return { corners: [k, next], weights: Float64Array.of(-x, -y) }
  })
}

/** Weights for which the corner between two edges alone is least. */
function meeting(before: Face | undefined, after: Face | undefined): Float64Array {
  return unit(
    sum(
      [before, after].flatMap((edge) => (edge ? [edge.weights] : [])),
      2,
    ),
  )
}

/** Weights for which the far end of a line is least; of a single place, any. */
function away(from: PlanePoint | undefined, to: PlanePoint): Float64Array {
  return from ? unit(Float64Array.from(step(to, from))) : Float64Array.of(1, 0)
}
