import { scaleLinear, type ScaleLinear } from 'd3'
import type { Blend } from '../domain/blend/blend'
import type { Oil } from '../domain/blend/oil'
import { inStripOrder } from './strip'

/** Oils that any of some blends holds, in the fixed order of strips. */
export function oilsInOrder(blends: readonly Blend[], oils: ReadonlyMap<string, Oil>): Oil[] {
  const used = new Set(
    blends.flatMap((blend) => Object.keys(blend).filter((oil) => (blend[oil] ?? 0) > 0)),
  )
  return inStripOrder(oils.values()).filter(({ id }) => used.has(id))
}

/** Shares differ from each other at this many percentage points: what the page shows. */
const SHOWN_SHARE_POINTS = 0.05

/** Whether an oil's share is the same in all of some blends, as it is shown. */
export function isSameShare(oil: string, blends: readonly Blend[]): boolean {
  const shares = blends.map((blend) => blend[oil] ?? 0)
  return Math.max(...shares) - Math.min(...shares) < SHOWN_SHARE_POINTS
}

/** One scale for the bars of all oils over a width in px: from 0 to the largest share of any. */
export function shareScale(blends: readonly Blend[], width: number): ScaleLinear<number, number> {
  const largest = Math.max(1, ...blends.flatMap((blend) => Object.values(blend)))
  return scaleLinear([0, largest], [0, width])
}
