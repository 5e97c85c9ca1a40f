import type { Blend, Prices } from '../../blend/blend'
import type { Problem } from '../../blend/check-blend'
import type { MeasureValues } from '../../blend/compare'

/** What every one-step study starts from. */
interface StudyBase {
  /** The blend to start from, in percent of oil weight. */
  readonly base: Blend
  /** Prices in money per kg of all oils that have one, on the shelf or not. */
  readonly prices: Prices
}

/** A study that holds measures near those of the blend it starts from. */
export interface HeldStudy extends StudyBase {
  /** How far each measure may move either way, in its unit; one left out is free to move. */
  readonly tolerances: Readonly<Record<string, number>>
  /** Whether the brief's own wishes must be kept as well. */
  readonly keepWishes: boolean
}

/** More of one measure (less, where less is wanted) with the others held. */
export interface BetterStudy extends HeldStudy {
  readonly kind: 'better'
  readonly measure: string
}

/** Other blends that make much the same bar. */
export interface LikeStudy extends HeldStudy {
  readonly kind: 'like'
  /** By how much at least one oil must differ, in percentage points. */
  readonly stepPoints: number
  /** How many to give. */
  readonly most: number
}

/** What can take the place of an oil. */
export interface WithoutStudy extends StudyBase {
  readonly kind: 'without'
  readonly oil: string
  /** Oils that may take its place, alone or two together. */
  readonly candidates: readonly string[]
  /** How many to give, of single oils and of pairs each. */
  readonly most: number
}

/** A one-step study of a blend. */
export type StudyQuestion = BetterStudy | LikeStudy | WithoutStudy

/** What a result is among the results of its study. */
export type Role =
  /** As far as the goal goes. */
  | { readonly kind: 'most' }
  /** The least change of oils that goes at least half the way. */
  | { readonly kind: 'least change' }
  /** The cheapest that goes at least half the way. */
  | { readonly kind: 'cheapest' }
  /** A bar much like the base with more or less of one oil. */
  | { readonly kind: 'shift'; readonly oil: string; readonly points: number }
  /** These oils took the place of the one left out. */
  | { readonly kind: 'replaces'; readonly oils: readonly string[] }

/** One blend a study found. */
export interface StudyResult {
  readonly role: Role
  readonly blend: Blend
  /** Every measure by id; cost only where all oils of the blend are priced. */
  readonly measures: MeasureValues
  /** How far the bar moved, in ties: see `barDistance`. */
  readonly movedTies: number
  /** How far the oils moved, in percentage points: see `totalChange`. */
  readonly changePoints: number
  /** Paths of the brief's limits that the blend does not keep. */
  readonly gives: readonly string[]
  /** Oils of the blend without a price. */
  readonly unpriced: readonly string[]
}

/** Why a study has nothing to show. */
export type NoResult =
  /** No blend of the shelf holds the measures; `nearest` moves the bar least. */
  | { readonly kind: 'nothing holds'; readonly nearest: StudyResult | undefined }
  /** The best that holds the measures is no better than the base. */
  | { readonly kind: 'no better'; readonly best: StudyResult }
  /** The study is about cost and these oils of the base have no price. */
  | { readonly kind: 'no price'; readonly oils: readonly string[] }
  /** No oil has room to take the place. */
  | { readonly kind: 'no room' }
  /** The rules of the brief leave so little that no blend was found or ruled out in time. */
  | { readonly kind: 'undecided' }

/** What a study came to; results are the best first. */
export type StudyAnswer =
  | {
      readonly status: 'found'
      /** Measures of the base by id. */
      readonly base: MeasureValues
      readonly results: readonly StudyResult[]
      /** Oils of the shelf that took no part for want of a price. */
      readonly leftOut: readonly string[]
    }
  | { readonly status: 'none'; readonly base: MeasureValues; readonly reason: NoResult }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }
