import { WHOLE_PERCENT } from '../units'

/** Shares of a blend by oil id, in percent of oil weight, adding to 100. */
export type Blend = Readonly<Record<string, number>>

/** Prices by oil id, in the maker's money per kg. */
export type Prices = Readonly<Record<string, number>>

/** Sum of all shares, in percent. */
export function totalShare(blend: Blend): number {
  let sum = 0
  for (const oil of Object.keys(blend)) sum += blend[oil] ?? NaN
  return sum
}

/**
 * The same blend with its shares scaled to add to 100; none is over 100, not by the last bit either.
 * Throws when there is nothing to scale.
 */
export function normalised(blend: Blend): Blend {
  const total = totalShare(blend)
  if (!(total > 0)) throw new Error('A blend without any share cannot be scaled to 100 %')
  const scaled: Record<string, number> = {}
  for (const oil of Object.keys(blend)) {
    scaled[oil] = Math.min(WHOLE_PERCENT, ((blend[oil] ?? NaN) * WHOLE_PERCENT) / total)
  }
  return scaled
}

/** The blend without the oils that take no part: shares of at most `negligible` percent. */
export function withoutTraces(blend: Blend, negligible: number): Blend {
  const kept: Record<string, number> = {}
  for (const oil of Object.keys(blend)) {
    const share = blend[oil] ?? NaN
    if (share > negligible) kept[oil] = share
  }
  return kept
}

/**
 * Total change from one blend to another in percentage points: the sum of all rises and falls.
 * Swapping 10 % of one oil for another is a change of 20.
 */
export function totalChange(from: Blend, to: Blend): number {
  const oils = new Set([...Object.keys(from), ...Object.keys(to)])
  let change = 0
  for (const oil of oils) change += Math.abs((to[oil] ?? 0) - (from[oil] ?? 0))
  return change
}

/** Weight average of a value over the blend, in the value's own unit. */
export function weightAverage(blend: Blend, valueOf: (oil: string) => number): number {
  let total = 0
  let weighted = 0
  for (const oil of Object.keys(blend)) {
    const share = blend[oil] ?? NaN
    if (share === 0) continue
    total += share
    weighted += share * valueOf(oil)
  }
  return weighted / total
}
