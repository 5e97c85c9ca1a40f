import { scaleLinear, type ScaleLinear } from 'd3'
import type { Interval } from '../domain/interval'

/** What the drawing of a stop shows, percent superfat. */
export interface StopSpans {
  /** As it stands, in typical lots. */
  readonly superfat: number
  /** Nineteen lots in twenty. */
  readonly likely: Interval
  readonly worst: Interval
  readonly planned: number
}

/** Where everything of it stands, px from the left; texts by their middle. */
export interface StopDrawing {
  readonly x: ScaleLinear<number, number>
  readonly ticks: readonly number[]
  readonly plannedAt: number
  readonly likelyAt: number
  /** Ends of the worst box, each with its text outside; null where the axis ends before it. */
  readonly worst: readonly {
    readonly value: number
    readonly at: number
    readonly anchor: string
  }[]
  /** Middle of "free lye" on the hatching; null where there is no room. */
  readonly freeAt: number | null
}

const EDGE_PX = 8
/** Room right of the axis for "10.8 worst", px at 12 px letters. */
const WORST_WORDS_PX = 78
/** Half widths of "planned 6.5" and "likely −10.5 to −12.5 %", px at 13 px letters. */
const PLANNED_HALF_PX = 40
const LIKELY_HALF_PX = 74
/** Widths of a worst figure and of "free lye" with its halo, px. */
const FIGURE_PX = 34
const FREE_PX = 66
const GAP_PX = 5

/** The axis shows at least this, and no more than this far to the left, percent. */
const AT_LEAST: Interval = { min: -4, max: 8 }
const FAR_LEFT = -60

/** Where a superfat at a stop stands: what is likely inside what is worst, `width` px wide. */
export function stopSpanDrawing({ likely, worst, planned }: StopSpans, width: number): StopDrawing {
  const high = Math.max(AT_LEAST.max, worst.max, planned)
  const lean = Math.min(AT_LEAST.min, worst.min)
  const right = width - WORST_WORDS_PX
  // Beyond the lean end there is room for its figure.
  const words = FIGURE_PX + GAP_PX
  const beyond = ((high - lean) * words) / (right - EDGE_PX - words)
  const low = Math.max(FAR_LEFT, worst.min < 0 ? lean - beyond : lean)
  const x = scaleLinear([low, high], [EDGE_PX, right]).clamp(true)
  const within = (at: number, half: number) => Math.max(half, Math.min(width - half, at))
  const leanText = x(worst.min) - GAP_PX
  const ends = [
    { value: worst.min, at: leanText, anchor: 'end' },
    { value: worst.max, at: x(worst.max) + GAP_PX, anchor: 'start' },
  ]
  const hatched = Math.min(x(0), x(worst.min) - FIGURE_PX - GAP_PX) - EDGE_PX
  const between = x(0) - x(worst.max) - WORST_WORDS_PX
  return {
    x,
    ticks: x.ticks(6),
    plannedAt: within(x(planned), PLANNED_HALF_PX),
    likelyAt: within((x(likely.min) + x(likely.max)) / 2, LIKELY_HALF_PX),
    worst: ends.filter(({ at }) => at - FIGURE_PX > 0),
    freeAt:
      between > FREE_PX ? x(0) - between / 2 : hatched > FREE_PX ? EDGE_PX + hatched / 2 : null,
  }
}
