import type { Blend } from '../../blend/blend'
import type { Problem } from '../../blend/check-blend'

/** A blend that meets the brief, with its measures. */
export interface Found {
  readonly blend: Blend
  /** Every measure by id; cost only where all oils of the blend are priced. */
  readonly measures: Readonly<Record<string, number>>
  /** The goal's measure, or the total change in percentage points. */
  readonly goalValue: number
}

/** How far a blend may be from the best there is, where time ran out before it was proved the best. */
export interface Gap {
  /** Proved: no blend's goal is better than this, in the goal's unit. */
  readonly bound: number
  /** Size of goal value less bound, in the goal's unit. */
  readonly gap: number
  /** The gap as a fraction of the goal value's size; of the bound's where that is larger. */
  readonly relativeGap: number
}

/** The gap between a goal's value and its bound, both in the goal's unit. */
export function gapBetween(value: number, bound: number): Gap {
  const gap = Math.abs(value - bound)
  const size = Math.max(Math.abs(value), Math.abs(bound))
  return { bound, gap, relativeGap: size > 0 ? gap / size : 0 }
}

/** One limit of a brief at another value, in the limit's unit. */
export interface LimitChange {
  readonly limit: string
  readonly from: number
  readonly to: number
}

/** The nearest brief that has a blend: which limits move where, and the blend that opens. */
export interface NearestBrief {
  readonly changes: readonly LimitChange[]
  readonly blend: Blend
}

/** What cannot hold together. */
export interface Conflict {
  /** Paths of limits and rules: measures.hardness.min, rules.atMostOils, rules.requires[0]. */
  readonly conflict: readonly string[]
  /** True where time ran out before each of them was shown to be needed. */
  readonly mayBeSmaller?: true | undefined
}

/** What a brief comes to. Only an optimal or feasible answer carries a blend. */
export type Answer =
  | ({ readonly status: 'optimal' } & Found)
  /** Under rules, when time ran out: the best blend found, and how far it may be from the best there is. */
  | ({ readonly status: 'feasible' } & Found & Gap)
  /**
   * Under rules, when time ran out before any blend was found, which does not say that there is none.
   * If there is one its goal is no better than the bound, in the goal's unit.
   */
  | { readonly status: 'undecided'; readonly bound: number }
  | ({
      readonly status: 'infeasible'
      /** The least that would have to give way, where that was asked for. */
      readonly nearest?: NearestBrief | undefined
    } & Conflict)
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Why a question about a brief has no answer. */
export type NoAnswer = Extract<Answer, { status: 'invalid' | 'infeasible' }>
