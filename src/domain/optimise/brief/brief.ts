import type { Blend, Prices } from '../../blend/blend'
import type { BriefRules } from './brief-rules'

/** A range with either end open, in the unit of what it limits. */
export interface Limits {
  readonly min?: number | undefined
  readonly max?: number | undefined
}

/** One oil of the shelf: its price in money per kg and the least and most share in percent. */
export interface ShelfOil extends Limits {
  readonly pricePerKg?: number | undefined
}

/** Several oils limited together, in percent of oil weight. */
export interface OilGroup extends Limits {
  readonly name: string
  readonly oils: readonly string[]
}

/** The range wished for of a measure, in its unit. */
export interface Wish extends Limits {
  /**
   * Asks it of typical lots only, even in a robust brief: for a question about one point of the map,
   * where no blend stays through all lots. Never stands in a file.
   */
  readonly typicalOnly?: boolean | undefined
}

/** What the blend should be best at. `closestTo` means the least total change from that blend. */
export type Goal =
  { readonly minimise: string } | { readonly maximise: string } | { readonly closestTo: Blend }

/** What a maker asks for. Only the oils listed may be used; a key left out means no limit. */
export interface Brief {
  readonly oils: Readonly<Record<string, ShelfOil>>
  readonly groups: readonly OilGroup[]
  readonly measures: Readonly<Record<string, Wish>>
  readonly goal: Goal
  /**
   * Whether wishes on measures hold for any lot of the oils within their stated ranges: a least value
   * for the lots that have least of it, a most for those that have most. The goal and the measures
   * told of a blend stay those of typical lots.
   */
  readonly robust?: boolean | undefined
  /** Rules about which oils a blend uses at all; none if left out. */
  readonly rules?: BriefRules | undefined
}

/** The prices a brief states, by oil id. */
export function pricesOf(brief: Brief): Prices {
  const prices: Record<string, number> = {}
  for (const [oil, { pricePerKg }] of Object.entries(brief.oils)) {
    if (pricePerKg !== undefined) prices[oil] = pricePerKg
  }
  return prices
}

/** The measure a goal is about; undefined for a goal about shares. */
export function goalMeasure(goal: Goal): string | undefined {
  if ('minimise' in goal) return goal.minimise
  if ('maximise' in goal) return goal.maximise
  return undefined
}
