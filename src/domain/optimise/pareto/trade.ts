import { parametricCost } from '../../lp/simplex/parametric-cost'
import { type BlendSpace, negated } from '../space/blend-space'
import type { SurfaceAxis } from './blend-surface'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { PRESENT_PERCENT } from '../brief/brief-rules'
import type { TradePoint } from './envelope'
import { anyBlend, type RuledQuestion, towards, within } from '../search/question'

/** Spans of an objective below this part of its size are taken for none. */
const NARROWEST_SPAN = 1e-9

/** Weights of the two scaled objectives, 0 or more, adding to 1. */
export type Weights = readonly [u: number, v: number]

/** A part of the trade-off: u from `from` to `to`. */
export interface Stretch {
  readonly from: number
  readonly to: number
}

/**
 * Two objectives of the blends that keep limits and rules, each scaled: an axis's measure, turned so that
 * less is better, less its `least` and over its `size`.
 */
export class Trade {
  readonly #any: RuledQuestion
  readonly #first: Float64Array
  readonly #second: Float64Array
  #least: readonly [number, number] = [0, 0]
  #size: readonly [number, number] = [1, 1]

  constructor(
    readonly space: BlendSpace,
    readonly axes: readonly [SurfaceAxis, SurfaceAxis],
  ) {
    this.#any = anyBlend(space)
    const [first, second] = axes.map(({ measure, wanted }) => {
      const worth = space.perPercent(measure)
      return wanted === 'less' ? worth : negated(worth)
    })
    this.#first = first ?? new Float64Array()
    this.#second = second ?? new Float64Array()
  }

  /** Takes the span of some points, stated in the scale so far, for 0 to 1 from now on. */
  scaleTo(points: readonly TradePoint[]): void {
    const raw = points.map(({ shares }) => [
      valueOf(this.#first, shares),
      valueOf(this.#second, shares),
    ])
    const spanOf = (axis: 0 | 1): [least: number, size: number] => {
      const values = raw.map((one) => one[axis] ?? NaN)
      const [least, most] = [Math.min(...values), Math.max(...values)]
      const narrow = NARROWEST_SPAN * Math.max(1, Math.abs(least), Math.abs(most))
      return [least, most - least > narrow ? most - least : 1]
    }
    const [u, v] = [spanOf(0), spanOf(1)]
    this.#least = [u[0], v[0]]
    this.#size = [u[1], v[1]]
  }

  pointOf(shares: Float64Array): TradePoint {
    const u = (valueOf(this.#first, shares) - this.#least[0]) / this.#size[0]
    const v = (valueOf(this.#second, shares) - this.#least[1]) / this.#size[1]
    return { u, v, shares }
  }

  /** The axes' measures of a point, in their units. */
  measuresOf({ shares }: TradePoint): Record<string, number> {
    return Object.fromEntries(
      this.axes.map(({ measure }) => [measure, valueOf(this.space.perPercent(measure), shares)]),
    )
  }

  /** A value of u as a value of the first axis's measure, in its unit. */
  firstOf(u: number): number {
    const value = u * this.#size[0] + this.#least[0]
    return this.axes[0].wanted === 'less' ? value : -value
  }

  /** The question of the least weighted sum with u in a stretch; its goal is that sum. */
  question([wu, wv]: Weights, { from, to }: Stretch): RuledQuestion {
    const [su, sv] = [wu / this.#size[0], wv / this.#size[1]]
    const cost = this.#first.map((one, oil) => su * one + sv * (this.#second[oil] ?? NaN))
    const raw = (u: number) => u * this.#size[0] + this.#least[0]
    const held =
      from === -Infinity && to === Infinity
        ? this.#any
        : within(this.#any, this.#first, raw(from), raw(to))
    const offset = -(su * this.#least[0] + sv * this.#least[1])
    return { ...towards(held, cost, 'least'), offset }
  }

  /**
   * The corners that nothing betters among all blends of the oils that a blend has, each at least as
   * much as it must be where it is in: one convex slice of the trade-off, by one parametric pass. With
   * steps a slice is the blend alone.
   */
  sliceThrough(shares: Float64Array): TradePoint[] {
    const { rules, program } = this.#any
    if (rules.step > 0) return [this.pointOf(shares)]
    const { simplex } = this.space
    shares.forEach((share, oil) => {
      const [lower, upper] = [program.lower[oil] ?? NaN, program.upper[oil] ?? NaN]
      const least = Math.max(lower, rules.leastUse[oil] ?? NaN)
      if (share > PRESENT_PERCENT) simplex.setVariableBounds(oil, Math.min(least, upper), upper)
      else simplex.setVariableBounds(oil, lower, lower)
    })
    try {
      const scaled = (values: Float64Array, axis: 0 | 1) =>
        values.map((one) => one / this.#size[axis])
      const pass = parametricCost(simplex, scaled(this.#first, 0), scaled(this.#second, 1))
      if (pass.status === 'unbounded')
        throw new UnsoundAnswer('A trade-off of limited shares was called unbounded')
      // A blend that keeps its limits only just, by rounding, may have no slice: then it stands alone.
      if (pass.status === 'infeasible') return [this.pointOf(shares)]
      return pass.corners.map(({ x }) => this.pointOf(x))
    } finally {
      shares.forEach((_, oil) =>
        simplex.setVariableBounds(oil, program.lower[oil] ?? NaN, program.upper[oil] ?? NaN),
      )
    }
  }
}

function valueOf(perPercent: Float64Array, shares: Float64Array): number {
  return shares.reduce((sum, share, oil) => sum + share * (perPercent[oil] ?? NaN), 0)
}
