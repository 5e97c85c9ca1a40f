import { measureOf } from '../../blend/library'
import type { BlendSpace } from '../space/blend-space'
import type { Axes } from './region'
import type { GoOn } from '../search/allowance'
import { checkedBlend } from '../space/found'
import { anyBlend, type RuledQuestion, towards, within } from '../search/question'
import { searchFor } from '../search/search'

/** What is known of the best value at a point of a map. */
export type Height =
  /** Proved the best. */
  | { readonly state: 'exact'; readonly value: number; readonly shares: Float64Array }
  /** A blend has this value; the best there is better by no more than the gap, in the measure's unit. */
  | {
      readonly state: 'gap'
      readonly value: number
      readonly gap: number
      readonly shares: Float64Array
    }
  /** Proved that no blend is there. */
  | { readonly state: 'none' }
  /** Not looked at yet, or no blend was found with the programs allowed. */
  | { readonly state: 'open' }

/** A part of a map in the axes' units: a point where both ends of an axis are the same. */
export interface Cell {
  readonly x: readonly [low: number, high: number]
  readonly y: readonly [low: number, high: number]
}

/** Finds the best of a measure at places of a map of two others, all limits and rules kept. */
export class Heights {
  readonly #best: RuledQuestion
  readonly #across: Float64Array
  readonly #up: Float64Array

  /** The space should have no wishes on the axes. */
  constructor(
    readonly space: BlendSpace,
    axes: Axes,
    value: string,
  ) {
    const way = measureOf(space.library, value).better === 'more' ? 'most' : 'least'
    this.#best = towards(anyBlend(space), space.perPercent(value), way)
    this.#across = space.perPercent(axes[0])
    this.#up = space.perPercent(axes[1])
  }

  at(place: Cell, goOn: GoOn): Height {
    const outcome = searchFor(this.held(place), goOn)
    if (outcome.status === 'infeasible') return { state: 'none' }
    if (outcome.status === 'undecided') return { state: 'open' }
    const { shares, value } = outcome
    checkedBlend(this.space.check, shares)
    if (outcome.status === 'optimal') return { state: 'exact', value, shares }
    return { state: 'gap', value, gap: Math.abs(value - outcome.bound), shares }
  }

  /** The question held to a place. */
  held({ x, y }: Cell): RuledQuestion {
    return within(within(this.#best, this.#across, ...x), this.#up, ...y)
  }

  /** The same question towards the least or most of one of the axes. */
  along(axis: 'x' | 'y', place: Cell, way: 'least' | 'most'): RuledQuestion {
    return towards(this.held(place), axis === 'x' ? this.#across : this.#up, way)
  }
}
