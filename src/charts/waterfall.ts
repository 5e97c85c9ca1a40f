import { scaleLinear, type ScaleLinear } from 'd3'
import type { Waterfall, WaterfallStep } from '../domain/cost/waterfall'

/** One step drawn as a bar that starts where the one before it ended; px from the left. */
export interface WaterfallBar extends WaterfallStep {
  readonly from: number
  readonly to: number
  /** The sum after it, in the unit of the steps. */
  readonly sum: number
  /** Of the whole, 0 to 1. */
  readonly share: number
}

/** A waterfall over a width. */
export interface WaterfallDrawing {
  readonly x: ScaleLinear<number, number>
  readonly bars: readonly WaterfallBar[]
}

/**
 * A waterfall from left to right: steps one below the other, from 0 at `left` to the total at `right`, px.
 * A total of 0 is drawn on a scale to 1.
 */
export function waterfallDrawing(
  { steps, total }: Waterfall,
  left: number,
  right: number,
): WaterfallDrawing {
  const x = scaleLinear([0, total > 0 ? total : 1], [left, right])
  let sum = 0
  const bars = steps.map((step) => {
    const from = x(sum)
    sum += step.value
    return { ...step, from, to: x(sum), sum, share: total > 0 ? step.value / total : 0 }
  })
  return { x, bars }
}
