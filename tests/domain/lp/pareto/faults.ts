import type { LinearProgram } from '../../../../src/domain/lp/program'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import type { VectorSurface } from '../../../../src/domain/lp/pareto/vector-surface'
import { Random } from '../../../generator/random'
import { leastFromScratch, leastOfEach } from './reference'

/*
 * Checks of a surface against its program. Each returns the faults found, so that a test can say
 * `toEqual([])`.
 */

/** What a surface promises: how far a face may be overstepped, in its scaled objectives. */
const TOLERANCE = 1e-9
/** An objective's range counts as at least this part of its size; the surface's own rule, restated. */
const NARROWEST = 1e-2

export type Finite = Exclude<VectorSurface, { readonly status: 'infeasible' }>

/** Σ a · b. */
export function product(a: ArrayLike<number>, b: ArrayLike<number>): number {
  return Array.from(a).reduce((sum, one, k) => sum + one * (b[k] ?? NaN), 0)
}

/** Weights of objectives as costs of variables. */
export function costOf(
  weights: ArrayLike<number>,
  objectives: readonly ArrayLike<number>[],
): Float64Array {
  const cost = new Float64Array(objectives[0]?.length ?? 0)
  objectives.forEach((objective, i) => {
    for (let j = 0; j < cost.length; j++) {
      cost[j] = (cost[j] ?? NaN) + (weights[i] ?? NaN) * (objective[j] ?? NaN)
    }
  })
  return cost
}

/** The width that each objective is scaled by: that of its attainable range. */
export function widthsOf(program: LinearProgram, objectives: readonly Float64Array[]): number[] {
  const least = leastOfEach(program, objectives)
  const most = leastOfEach(
    program,
    objectives.map((objective) => objective.map((one) => -one)),
  )
  return objectives.map((objective, i) => {
    const size = WHOLE * objective.reduce((largest, one) => Math.max(largest, Math.abs(one)), 0)
    return Math.max(-(most[i] ?? NaN) - (least[i] ?? NaN), NARROWEST * size) || 1
  })
}

/** The largest a variable of the programs here can be: shares in percent. */
const WHOLE = 100

/**
 * Directions in which the surface's corners do not reach what HiGHS reaches: random ones, all faces'
 * and all corners'. So none is missing and none is out of place.
 */
export function missedBy(
  surface: Finite,
  program: LinearProgram,
  objectives: readonly Float64Array[],
  { directions, whole, seed }: { directions: number; whole: boolean; seed: number },
): string[] {
  const widths = widthsOf(program, objectives)
  const random = new Random(seed)
  const drawn = Array.from({ length: directions }, () =>
    widths.map((width) => (whole ? gaussian(random) : -Math.log(1 - random.next())) / width),
  )
  const asked = [
    drawn,
    surface.faces.map(({ weights }) => weights),
    surface.corners.map(({ weights }) => weights),
  ]
    .flat()
    .map((weights) => scaled(weights, widths))
  const costs = asked.map((weights) => costOf(weights, objectives))
  const least = leastOfEach(program, costs)
  return asked.flatMap((weights, k) => {
    const reached = Math.min(...surface.corners.map(({ values }) => product(weights, values)))
    if (Math.abs(reached - (least[k] ?? NaN)) <= TOLERANCE) return []
    // After hundreds of bases HiGHS is off by a few 1e-9 on the narrowest programs: ask it afresh.
    const gap = reached - leastFromScratch(program, costs[k] ?? new Float64Array())
    return Math.abs(gap) <= TOLERANCE ? [] : [`${gap} missed towards ${weights.join()}`]
  })
}

/** Weights divided so that they have length 1 for objectives scaled by these widths. */
function scaled(weights: readonly number[], widths: readonly number[]): number[] {
  const size = Math.hypot(...weights.map((weight, i) => weight * (widths[i] ?? NaN)))
  return weights.map((weight) => weight / size)
}

/** A normal deviate by the method of G.E.P. Box and M.E. Muller (1958): its directions are even. */
export function gaussian(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random.next()))
  return radius * Math.cos(2 * Math.PI * random.next())
}

/** Corners that are not alone in being least in their own direction, or faces not least all over. */
export function unsupported({ corners, faces }: Finite, widths: readonly number[]): string[] {
  const beaten = corners.flatMap((corner, k) => {
    const own = product(corner.weights, corner.values)
    const rivals = corners.filter((other) => product(corner.weights, other.values) <= own)
    return rivals.length === 1 ? [] : [`corner ${k} is not alone in its direction`]
  })
  const uneven = faces.flatMap(({ corners: on, weights }, k) => {
    const even = scaled(weights, widths)
    const values = on.map((place) => product(even, corners[place]?.values ?? []))
    const spread = Math.max(...values) - Math.min(...values)
    return spread <= 2 * TOLERANCE ? [] : [`face ${k} is uneven by ${spread}`]
  })
  return [...beaten, ...uneven]
}

/** Random images of a program that lie beyond a face of its whole hull by more than the tolerance. */
export function outside(
  { corners, faces }: Finite,
  program: LinearProgram,
  objectives: readonly Float64Array[],
  count: number,
  seed: number,
): string[] {
  const widths = widthsOf(program, objectives)
  return randomSolutions(program, count, seed).flatMap((x, k) => {
    const image = objectives.map((objective) => product(objective, x))
    return faces.flatMap(({ corners: on, weights }) => {
      const even = scaled(weights, widths)
      const depth = product(even, image) - product(even, corners[on[0] ?? NaN]?.values ?? [])
      return depth >= -TOLERANCE ? [] : [`solution ${k} is ${-depth} outside`]
    })
  })
}

/** Solutions all over a program's feasible set: mixtures of vertices that are best by random costs. */
function randomSolutions(program: LinearProgram, count: number, seed: number): number[][] {
  const random = new Random(seed)
  const simplex = new Simplex(program)
  const vertices = Array.from({ length: 12 }, () => {
    simplex.setCost(Array.from(program.cost, () => gaussian(random)))
    const outcome = simplex.solve()
    if (outcome.status !== 'optimal') throw new Error(`Expected a solution, not ${outcome.status}`)
    return [...outcome.x]
  })
  return Array.from({ length: count }, () => {
    const parts = vertices.map(() => -Math.log(1 - random.next()))
    const total = parts.reduce((sum, part) => sum + part, 0)
    return Array.from(program.cost, (_, j) =>
      vertices.reduce(
        (sum, vertex, k) => sum + ((parts[k] ?? NaN) / total) * (vertex[j] ?? NaN),
        0,
      ),
    )
  })
}
