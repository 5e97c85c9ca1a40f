import { line, scaleLinear, type ScaleLinear } from 'd3'
import type { WhyCurve } from '../domain/optimise/why/why'

/** A small curve drawn over a box in px. */
export interface WhyDrawing {
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
  readonly path: string
  /** Where the price per unit holds, px from the left. */
  readonly holds: { readonly from: number; readonly to: number }
}

/** Least and most of all curves together: one scale for all, so that steepness is worth. */
export function valuesOf(curves: readonly WhyCurve[]): readonly [number, number] {
  const values = curves.flatMap(({ points }) => points.map(({ value }) => value))
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return values.length === 0 ? [0, 1] : low < high ? [low, high] : [low - 1, high + 1]
}

/** The curve's value at a place of its limit, between the bends it lies between. */
export function valueAt({ points }: WhyCurve, at: number): number {
  const after = points.findIndex((point) => point.at >= at)
  const [from, to] = [points[after - 1], points[after]]
  if (!to) return points.at(-1)?.value ?? NaN
  if (!from || to.at === from.at) return to.value
  return from.value + ((to.value - from.value) * (at - from.at)) / (to.at - from.at)
}

/** One curve over a width and height in px, on the values that all share. */
export function whyDrawing(
  { points, reason }: WhyCurve,
  values: readonly [number, number],
  width: number,
  height: number,
): WhyDrawing {
  const [first, last] = [points[0]?.at ?? 0, points.at(-1)?.at ?? 1]
  const x = scaleLinear([first, last > first ? last : first + 1], [2, width - 2])
  const y = scaleLinear(values, [height - 2, 2])
  const path = line<{ at: number; value: number }>(
    ({ at }) => x(at),
    ({ value }) => y(value),
  ).digits(1)([...points])
  const [from, to] = reason.span
  const within = (value: number) => Math.min(width, Math.max(0, x(value)))
  return { x, y, path: path ?? '', holds: { from: within(from ?? first), to: within(to ?? last) } }
}
