import { Frame } from './frame'
import { type Growth, grow, type View, type Watch } from './grow'
import { Hull } from './hull'
import type { ImageProgram, Support } from './image-program'
import { addMultiple, dot, length } from './vectors'

/** The image of a bounded program: a single point, or a hull in as many dimensions as it has. */
export type WholeImage =
  | { readonly dimension: 0; readonly x: Float64Array }
  | { readonly dimension: number; readonly growth: Growth; readonly view: View }

/**
 * The whole image, grown from as many independent points as it has dimensions, and one. If it is
 * flat (objectives that depend on one another, a brief that leaves no room) the hull is grown in
 * the flat itself. Expects an image that is bounded: every objective has a least and a most.
 */
export function wholeImage(program: ImageProgram, tolerance: number, watch: Watch): WholeImage {
  const corners = independentPoints(program, tolerance)
  const [first] = corners
  if (!first?.x) throw new Error('An image without a point')
  if (corners.length === 1) return { dimension: 0, x: first.x }
  const view = viewOf(corners)
  const hull = new Hull(corners.map(view.generatorOf))
  const solutions = corners.map(({ x }) => x)
  const growth = grow(hull, solutions, program, view, tolerance, watch)
  return { dimension: corners.length - 1, growth, view }
}

/**
 * Points of the image that span all of it. The ends of the axes mostly do; for every direction in
 * which they do not, the image's two ends in that direction either add a point or prove it flat.
 */
function independentPoints(program: ImageProgram, tolerance: number): Support[] {
  const size = 1 + program.objectives.length
  const ends = [...program.least, ...program.most].flatMap((x) => (x ? [program.pointOf(x)] : []))
  const frame = new Frame(size)
  const used = frame.addFarthest(
    ends.map(({ generator }) => generator),
    tolerance,
  )
  const chosen = ends.filter((_, k) => used.includes(k))
  while (frame.axes.length < size) {
    const plane = frame.complement()
    const normal = plane.subarray(1)
    const [low, high] = [program.support(normal), program.support(normal.map((one) => -one))]
    const [below, above] = [low, high].map((end) => dot(plane, end.generator) / length(normal))
    const farther = Math.abs(below ?? NaN) > Math.abs(above ?? NaN) ? low : high
    if (Math.max(Math.abs(below ?? NaN), Math.abs(above ?? NaN)) > tolerance) {
      chosen.push(farther)
      frame.add(farther.generator)
    } else frame.add(plane)
  }
  return chosen
}

/** Coordinates within the flat through some independent points; all of space if they are enough. */
function viewOf(points: readonly Support[]): View {
  const [origin, ...others] = points.map(({ generator }) => generator.subarray(1))
  if (!origin) throw new RangeError('No points')
  const flat = new Frame(origin.length)
  for (const point of others) flat.add(point.map((one, i) => one - (origin[i] ?? NaN)))
  return {
    weightsOf: (plane) => {
      const weights = new Float64Array(origin.length)
      flat.axes.forEach((axis, i) => addMultiple(weights, plane[1 + i] ?? NaN, axis))
      return weights
    },
    generatorOf: ({ generator }) => {
      const from = generator.subarray(1).map((one, i) => one - (origin[i] ?? NaN))
      return Float64Array.of(1, ...flat.axes.map((axis) => dot(axis, from)))
    },
  }
}
