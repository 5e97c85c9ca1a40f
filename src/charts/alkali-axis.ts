import { scaleLinear } from 'd3'
import type { NaturalRange } from '../domain/blend/oil'

/** What is drawn on one axis of saponification values, mg KOH per g. */
export interface AlkaliFigures {
  readonly range: NaturalRange
  /** Of the oil copied from. */
  readonly copied: NaturalRange
  readonly value: number
  readonly fromAcids: number
}

/** Room on both sides, as a part of the span, and ticks wanted. */
const ROOM = 0.12
const TICKS = 6

/** Where ranges, value and the figure from the acids lie on an axis of `width` px. */
export function alkaliAxis({ range, copied, value, fromAcids }: AlkaliFigures, width: number) {
  const all = [range.low, range.high, copied.low, copied.high, value, fromAcids]
  const [least, most] = [Math.min(...all), Math.max(...all)]
  const room = Math.max(1, (most - least) * ROOM)
  const x = scaleLinear([least - room, most + room], [0, width])
  const band = ({ low, high }: NaturalRange) => ({ x: x(low), width: x(high) - x(low) })
  return {
    range: band(range),
    copied: band(copied),
    value: x(value),
    fromAcids: x(fromAcids),
    ticks: x.ticks(TICKS).map((tick) => ({ x: x(tick), label: String(tick) })),
  }
}
