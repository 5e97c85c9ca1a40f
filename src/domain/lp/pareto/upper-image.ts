import { type Growth, grow, type View, type Watch } from './grow'
import { Hull } from './hull'
import type { ImageProgram } from './image-program'
import { axis } from './vectors'

/**
 * The upper image: all values that some solution has or betters, the image with the positive
 * directions added. Its extreme points are the non-dominated extreme points of the image, and its
 * bounded faces make up all that is non-dominated (A. Löhne, Vector Optimization with Infimum and
 * Supremum (2011), chapter 4). Being full-dimensional, it needs no care for flat images.
 */
export function upperImage(program: ImageProgram, tolerance: number, watch: Watch): Growth {
  const count = program.objectives.length
  const axes = program.objectives.map((_, i) => axis(1 + i, 1 + count))
  const seeds = program.least.filter((x) => x !== null)
  const first = seeds[0] ?? program.anySolution()
  const hull = new Hull([program.pointOf(first).generator, ...axes])
  const solutions: (Float64Array | null)[] = [first, ...axes.map(() => null)]
  for (const x of seeds.slice(1)) {
    const { generator } = program.pointOf(x)
    if (hull.depthOf(generator) >= -tolerance) continue
    hull.add(generator)
    solutions.push(x)
  }
  return grow(hull, solutions, program, efficientView, tolerance, watch)
}

/** The hull is in the scaled objectives; a weight that rounding took below zero is made that. */
export const efficientView: View = {
  weightsOf: (plane) => plane.slice(1).map((one) => Math.max(0, one)),
  generatorOf: ({ generator }) => generator,
}
