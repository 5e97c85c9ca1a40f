import type { Blend } from '../blend/blend'
import type { AlkaliKind } from '../chemistry/alkali'

/** How much water: one of three ways, all reckoned on the hydroxide as weighed, impurities and all. */
export type WaterRule =
  /** Hydroxide in g per 100 g of lye solution. */
  | { readonly lyeConcentration: number }
  /** Water in g per g of hydroxide. */
  | { readonly ratio: number }
  /** Water in g per 100 g of oils. */
  | { readonly percentOfOils: number }

/** A mould to fill. */
export interface Mould {
  readonly volumeMl: number
  /** How much of the volume the batter takes, percent; left out means all of it. */
  readonly fillPercent?: number | undefined
  /** Density of the batter in g/ml; left out means BATTER_DENSITY_G_PER_ML. */
  readonly densityGPerMl?: number | undefined
}

/** The smallest steps of the scales in use, in g. */
export interface Scale {
  readonly oilStepG: number
  readonly lyeStepG: number
}

/** A figure for each alkali in use. */
export type PerAlkali = Readonly<{ [kind in AlkaliKind]?: number | undefined }>

/** What a maker asks a batch to be. Shares, purities and superfat are percent, as makers and files write them. */
export interface BatchOrder {
  readonly blend: Blend
  /** Either the weight of all oils or a mould. */
  readonly oilGrams?: number | undefined
  readonly mould?: Mould | undefined
  /** How much of the fat each alkali turns to soap, percent of the equivalents (mol), adding to 100. */
  readonly alkali: PerAlkali
  /** Percent of pure alkali in what is weighed; left out means 100. */
  readonly purity: PerAlkali
  /** Lye discount in percent: the part of the fat's equivalents that gets no alkali. */
  readonly superfat: number
  readonly water: WaterRule
  /** Left out means exact weights. */
  readonly scale?: Scale | undefined
}

/**
 * Density of fresh batter in g/ml used for moulds: common practice, 1.00 to 1.05; the middle is taken.
 */
export const BATTER_DENSITY_G_PER_ML = 1.03

/** Alkalis an order uses, in a fixed order. */
export function alkalisOf(order: BatchOrder): AlkaliKind[] {
  return (['naoh', 'koh'] as const).filter((kind) => (order.alkali[kind] ?? 0) > 0)
}
