import { range, scaleLinear, type ScaleLinear } from 'd3'
import type { Limits } from '../domain/optimise/brief/brief'
import type { Interval } from '../domain/interval'

/** Steps of a measure's gauge in the measure's own unit. */
export interface Steps {
  /** Between ticks: a tick is a tie. */
  readonly tick: number
  /** Of an arrow key, a fine one, and a page key. */
  readonly key: number
  readonly fine: number
  readonly page: number
  /** What a dragged flag rounds to. */
  readonly drag: number
  readonly decimals: number
  /** Decimals of the figures at the ends. */
  readonly endDecimals: number
}

/** A gauge's scale and the values its ticks stand at. */
export interface Gauge {
  readonly x: ScaleLinear<number, number>
  readonly ticks: readonly number[]
}

/** Room in px at each end of a gauge for a flag that points outward. */
const END_PX = 14

/**
 * The scale of one wish gauge over a width in px: from the shelf's least to its most, widened where a
 * wish lies outside, so that every flag is in sight.
 */
export function gaugeOf(shelf: Interval, asked: Limits, steps: Steps, width: number): Gauge {
  const stated = [asked.min, asked.max].filter((value) => value !== undefined)
  const low = Math.min(shelf.min, ...stated)
  const high = Math.max(shelf.max, ...stated)
  const spare = high - low > steps.fine ? 0 : steps.tick
  const x = scaleLinear([low - spare, high + spare], [END_PX, width - END_PX])
  const first = Math.ceil(shelf.min / steps.tick)
  const last = Math.floor(shelf.max / steps.tick)
  return { x, ticks: range(first, last + 1).map((number) => number * steps.tick) }
}

/** A value rounded to a step, free of binary noise. */
export function toStep(value: number, step: number, decimals: number): number {
  return Number((Math.round(value / step) * step).toFixed(decimals))
}

/**
 * How far the reach of a measure falls short of what is asked, in the measure's unit; 0 where they meet.
 * `from` and `to` are the stretch to hatch.
 */
export function shortfall(
  reach: Interval,
  asked: Limits,
): { readonly from: number; readonly to: number; readonly by: number } {
  if (asked.min !== undefined && asked.min > reach.max)
    return { from: reach.max, to: asked.min, by: asked.min - reach.max }
  if (asked.max !== undefined && asked.max < reach.min)
    return { from: asked.max, to: reach.min, by: reach.min - asked.max }
  return { from: 0, to: 0, by: 0 }
}
