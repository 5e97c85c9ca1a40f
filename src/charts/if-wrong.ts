import { scaleLinear, type ScaleLinear } from 'd3'

/** One axis, percent superfat, for all things that may be wrong. */
export function wrongScale(
  superfatsPercent: readonly number[],
  askedPercent: number,
  width: number,
): ScaleLinear<number, number> {
  const all = [...superfatsPercent, askedPercent, 0]
  const [low, high] = [Math.min(-2, ...all), Math.max(2, ...all)]
  return scaleLinear([low, high], [EDGE_PX + HALF_BOX_PX, width - EDGE_PX - HALF_BOX_PX])
}

/** Half a side of the box that shows where the superfat goes, px. */
export const HALF_BOX_PX = 5
const EDGE_PX = 3

/** The line from the needle to the box, px; null where the box is at the needle. */
export function wrongWay(from: number, to: number): readonly [number, number] | null {
  const sign = Math.sign(to - from)
  const end = to - sign * HALF_BOX_PX
  return (end - from) * sign > 0 ? [from, end] : null
}
