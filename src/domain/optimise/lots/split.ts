import type { NaturalRange } from '../../blend/oil'

/*
 * The split-uniform density of a figure of which only a low, a typical and a high are known: half of
 * it evenly between low and typical, half evenly between typical and high, so that the typical value
 * is its median. Where the typical value is one of the ends there is no other side to fall on, and
 * all of it lies evenly between the ends.
 */

/** The value below which the part `quantile` (0 to 1) of the density lies. */
export function splitDraw({ low, typical, high }: NaturalRange, quantile: number): number {
  if (typical <= low || typical >= high) return low + quantile * (high - low)
  return quantile < 0.5
    ? low + 2 * quantile * (typical - low)
    : typical + (2 * quantile - 1) * (high - typical)
}

/** The density at a value inside the range, as a part (0 to 1) of the largest it has. */
export function splitDensity({ low, typical, high }: NaturalRange, value: number): number {
  const [below, above] = [typical - low, high - typical]
  if (below <= 0 || above <= 0) return 1
  return Math.min(below, above) / (value < typical ? below : above)
}

/** The narrower of the sides that hold anything, in the figure's unit; 0 where none does. */
export function narrowerSide({ low, typical, high }: NaturalRange): number {
  const sides = [typical - low, high - typical].filter((side) => side > 0)
  return sides.length === 0 ? 0 : Math.min(...sides)
}
