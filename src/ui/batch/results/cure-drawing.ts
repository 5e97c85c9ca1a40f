import { area, line, scaleLinear } from 'd3'
import type { CurePlan, CurePoint } from '../../../domain/batch/react/cure'

/** Room around the drawing, px. */
const EDGE = { left: 34, right: 46, top: 8, bottom: 18 }

/** Percent of the weight poured in a whole. */
const PERCENT = 100

/** The weight of bars while they dry, as paths: percent of what was poured over days. */
export function cureDrawing({ curve, days }: CurePlan, width: number, height: number) {
  const least = Math.min(...curve.map(({ lowLeft }) => lowLeft)) * PERCENT
  const x = scaleLinear([0, Math.max(1, days)], [EDGE.left, width - EDGE.right])
  const y = scaleLinear([least, PERCENT], [height - EDGE.bottom, EDGE.top]).nice(4)
  const at = ({ day }: CurePoint) => x(day)
  const band = area<CurePoint>(
    at,
    ({ lowLeft }) => y(lowLeft * PERCENT),
    ({ highLeft }) => y(highLeft * PERCENT),
  )
  const middle = line<CurePoint>(at, ({ left }) => y(left * PERCENT))
  const last = curve.at(-1)
  return {
    band: band([...curve]) ?? '',
    middle: middle([...curve]) ?? '',
    days: x.ticks(Math.min(6, Math.max(1, days))).map((day) => ({ day, at: x(day) })),
    percents: y.ticks(4).map((percent) => ({ percent, at: y(percent) })),
    right: width - EDGE.right,
    bottom: height - EDGE.bottom,
    left: EDGE.left,
    end: last && { x: x(last.day), y: y(last.left * PERCENT), percent: last.left * PERCENT },
  }
}
