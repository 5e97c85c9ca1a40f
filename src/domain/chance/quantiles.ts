import { quantileSorted } from 'd3-array'

/** A value that so large a part of many draws stays below. */
export interface Quantile {
  /** 0 to 1. */
  readonly part: number
  /** In the unit of what was drawn. */
  readonly value: number
}

/** The parts that a spread is told by: its middle, the half around it and nine in ten. */
export const PARTS = [0.05, 0.25, 0.5, 0.75, 0.95] as const

/**
 * Quantiles of some values, which may come in any order: linear between the order statistics, with
 * the least and most as 0 and 1 (definition 7 of R.J. Hyndman, Y. Fan, The American Statistician 50
 * (1996) 361). Throws where there are no values.
 */
export function quantilesOf(values: Float64Array, parts: readonly number[] = PARTS): Quantile[] {
  if (values.length === 0)
    throw new Error('Nothing was drawn, so there is no spread: draw 1 or more')
  const sorted = Array.from(values.toSorted())
  return parts.map((part) => ({ part, value: quantileSorted(sorted, part) ?? NaN }))
}
