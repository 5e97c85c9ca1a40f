import { scaleLinear, type ScaleLinear } from 'd3'
import type { Interval } from '../domain/interval'

/** What the drawing of a superfat shows, percent. */
export interface SuperfatSpans {
  readonly asked: number
  /** Nineteen lots in twenty. */
  readonly likely: Interval
  /** Everything at its leanest, and at its richest. */
  readonly worst: Interval
  /** The worst there can be, were certificates not those of the lots in hand; null without any. */
  readonly wide: Interval | null
}

/** A figure with the place of its text, px from the left. */
interface Label {
  readonly value: number
  readonly at: number
  readonly anchor: 'start' | 'end'
}

/** Where everything of the drawing stands, px from the left. */
export interface SpanDrawing {
  readonly x: ScaleLinear<number, number>
  readonly ticks: readonly number[]
  readonly likely: readonly [Label, Label]
  readonly worst: readonly [Label, Label]
}

const EDGE_PX = 6
/** Room for "10.8 worst" right of the axis, px at 12 px letters. */
const WORST_WORDS_PX = 70
/** Widths of "likely −0.7" and of a figure, px at 12 px letters. */
const LIKELY_WORDS_PX = 66
const FIGURE_PX = 32
const GAP_PX = 4
/** How far the words of the likely ends reach in over the band, px. */
const OVER_PX = 12

/** The axis shows at least this, percent, so that spans of different batches look alike. */
const AT_LEAST: Interval = { min: -2, max: 10 }
/** Beyond the lean end there is room for its figure, percent. */
const BEYOND_PERCENT = 1.3

/** Where a superfat, what is likely and what is worst stand on one axis, `width` px wide. */
export function superfatSpanDrawing(spans: SuperfatSpans, width: number): SpanDrawing {
  const { asked, likely, worst, wide } = spans
  const lows = [likely.min, worst.min, wide?.min ?? 0, asked]
  const highs = [likely.max, worst.max, wide?.max ?? 0, asked]
  const x = scaleLinear(
    [Math.min(AT_LEAST.min, Math.min(...lows) - BEYOND_PERCENT), Math.max(AT_LEAST.max, ...highs)],
    [EDGE_PX, width - WORST_WORDS_PX],
  )
  return { x, ticks: x.ticks(7), likely: likelyLabels(spans, x), worst: worstLabels(worst, x) }
}

/** Above the band, clear of the needle and inside the drawing. */
function likelyLabels(
  { asked, likely }: SuperfatSpans,
  x: ScaleLinear<number, number>,
): [Label, Label] {
  const needle = x(asked)
  const left = Math.min(x(likely.min) + OVER_PX, needle - GAP_PX)
  const right = Math.max(x(likely.max) - OVER_PX, needle + GAP_PX)
  return [
    { value: likely.min, at: Math.max(LIKELY_WORDS_PX + EDGE_PX, left), anchor: 'end' },
    { value: likely.max, at: right, anchor: 'start' },
  ]
}

/** At the band's level, outside the box; where that would lie over the wall, left of the wall. */
function worstLabels({ min, max }: Interval, x: ScaleLinear<number, number>): [Label, Label] {
  const wall = x(0)
  const outside = x(min) - GAP_PX
  const overWall = min >= 0 && outside - FIGURE_PX < wall
  return [
    { value: min, at: overWall ? wall - GAP_PX : outside, anchor: 'end' },
    { value: max, at: x(max) + GAP_PX, anchor: 'start' },
  ]
}
