import type { Simplex } from '../simplex/simplex'
import { COST_ROUNDING, NARROWEST_RANGE, WEIGHT_ZERO } from './tolerances'
import { dot, unit } from './vectors'

/** A point of the image, or a direction in which it has no end. */
export interface Support {
  /** (1, z) for a point z, (0, r) for a direction r of length 1, in scaled objectives. */
  readonly generator: Float64Array
  /** The solution whose image is z; none for a direction. */
  readonly x: Float64Array | null
}

/**
 * The image of a program's feasible set under several linear objectives, seen through its support
 * function: for given weights, the point whose weighted sum is least. One warm simplex answers all,
 * since only its cost changes. Objectives are scaled to 0 … 1 over their attainable ranges.
 */
export class ImageProgram {
  /** What is 0 in each scaled objective, and how much is 1: value = low + scale · scaled. */
  readonly low: Float64Array
  readonly scale: Float64Array
  /** A point with the least, and one with the most of each objective; null where it has no end. */
  readonly least: readonly (Float64Array | null)[]
  readonly most: readonly (Float64Array | null)[]
  /** A direction for every end that there is not, in the objectives' own units. */
  readonly endless: readonly Float64Array[]
  readonly #cost: Float64Array
  /** Sum of the absolute terms of each cost. */
  readonly #magnitude: Float64Array

  /** Expects a simplex whose program is feasible. */
  constructor(
    readonly simplex: Simplex,
    readonly objectives: readonly Float64Array[],
  ) {
    this.#cost = new Float64Array(objectives[0]?.length ?? 0)
    this.#magnitude = new Float64Array(this.#cost.length)
    const endless: Float64Array[] = []
    const least: (Float64Array | null)[] = []
    const most: (Float64Array | null)[] = []
    const end = (cost: Float64Array) => {
      const outcome = this.#solve(cost)
      if (outcome.status === 'optimal') return outcome.x.slice()
      endless.push(this.valuesAt(outcome.ray))
      return null
    }
    // The least of the first with the most of all others, then the reverse: round the image of two.
    for (const isLeastOfFirst of [true, false]) {
      objectives.forEach((objective, i) => {
        if ((i === 0) === isLeastOfFirst) least[i] = end(objective)
        else most[i] = end(objective.map((one) => -one))
      })
    }
    this.least = least
    this.most = most
    this.endless = endless
    const known = [...this.least, ...this.most].filter((x) => x !== null)
    const ranges = objectives.map((objective) => known.map((x) => dot(objective, x)))
    this.low = Float64Array.from(ranges, (values) => (values.length > 0 ? Math.min(...values) : 0))
    const largestX = Math.max(0, ...known.map(largest))
    this.scale = Float64Array.from(objectives, (objective, i) =>
      scaleOf(objective, ranges[i] ?? [], largestX),
    )
  }

  /** The point with the least Σ weight · scaled objective, or a direction in which it falls for ever. */
  support(weights: Float64Array): Support {
    const cost = this.#cost.fill(0)
    const magnitude = this.#magnitude.fill(0)
    this.objectives.forEach((objective, i) => {
      const weight = weights[i] ?? NaN
      if (Math.abs(weight) < WEIGHT_ZERO) return
      const factor = weight / (this.scale[i] ?? NaN)
      for (let j = 0; j < cost.length; j++) {
        const term = factor * (objective[j] ?? NaN)
        cost[j] = (cost[j] ?? NaN) + term
        magnitude[j] = (magnitude[j] ?? NaN) + Math.abs(term)
      }
    })
    for (let j = 0; j < cost.length; j++) {
      if (Math.abs(cost[j] ?? NaN) < COST_ROUNDING * (magnitude[j] ?? NaN)) cost[j] = 0
    }
    const outcome = this.#solve(this.#cost)
    return outcome.status === 'optimal' ? this.pointOf(outcome.x.slice()) : this.#along(outcome.ray)
  }

  /** Some solution, whatever its image. */
  anySolution(): Float64Array {
    const outcome = this.#solve(this.#cost.fill(0))
    if (outcome.status === 'optimal') return outcome.x.slice()
    throw new Error('A program without a cost was called unbounded')
  }

  /** The image of a solution. */
  pointOf(x: Float64Array): Support {
    const generator = new Float64Array(1 + this.objectives.length).fill(1)
    this.objectives.forEach((objective, i) => {
      generator[1 + i] = (dot(objective, x) - (this.low[i] ?? NaN)) / (this.scale[i] ?? NaN)
    })
    return { generator, x }
  }

  /** The objectives' own values at a solution, or their changes along a ray. */
  valuesAt(x: Float64Array): Float64Array {
    return Float64Array.from(this.objectives, (objective) => dot(objective, x))
  }

  #along(ray: Float64Array): Support {
    const rates = this.valuesAt(ray).map((one, i) => one / (this.scale[i] ?? NaN))
    return { generator: unit(Float64Array.of(0, ...rates)), x: null }
  }

  #solve(cost: Float64Array) {
    this.simplex.setCost(cost)
    const outcome = this.simplex.solve()
    if (outcome.status === 'infeasible') throw new Error('A feasible program was called infeasible')
    return outcome
  }
}

/** Width of an objective's values, but no narrower than its size lets tell apart; 1 of no size. */
function scaleOf(objective: Float64Array, values: readonly number[], largestX: number): number {
  const size = largestX * largest(objective)
  const width = values.length > 0 ? Math.max(...values) - Math.min(...values) : 0
  return Math.max(width, NARROWEST_RANGE * size) || 1
}

function largest(values: Float64Array): number {
  return values.reduce((most, one) => Math.max(most, Math.abs(one)), 0)
}
