import { scaleLinear, type ScaleLinear } from 'd3'
import type { Interval } from '../domain/interval'
import type { Sample } from '../domain/optimise/map/sample-linear'

/** One upright axis of the lines: its measure, where it stands, and its scale to px from the top. */
export interface LineAxis {
  readonly measure: string
  readonly x: number
  readonly scale: ScaleLinear<number, number>
}

/** Ranges that lines must keep, by measure, in its unit. */
export type Brushes = Readonly<Record<string, Interval>>

/** Upright axes side by side over a width in px, each from the sample's least to its most. */
export function lineAxes(
  sample: Sample,
  measures: readonly string[],
  width: number,
  top: number,
  bottom: number,
): LineAxis[] {
  const shown = measures.filter((measure) => sample.measures.includes(measure))
  const step = width / Math.max(1, shown.length)
  return shown.map((measure, index) => {
    const { min, max } = rangeIn(sample, measure)
    const spare = max > min ? 0 : 1
    return {
      measure,
      x: step * (index + 0.5),
      scale: scaleLinear([min - spare, max + spare], [bottom, top]),
    }
  })
}

/** Least and most of a measure in a sample. */
export function rangeIn(sample: Sample, measure: string): Interval {
  const column = sample.measures.indexOf(measure)
  let [min, max] = [Infinity, -Infinity]
  for (let row = 0; row < sample.count; row++) {
    const value = sample.values[row * sample.measures.length + column] ?? NaN
    if (value < min) min = value
    if (value > max) max = value
  }
  return sample.count > 0 ? { min, max } : { min: 0, max: 1 }
}

/** Rows of a sample that keep every brush, in order. */
export function keptRows(sample: Sample, brushes: Brushes): Uint32Array {
  const limits = Object.entries(brushes).map(([measure, range]) => ({
    column: sample.measures.indexOf(measure),
    ...range,
  }))
  const kept = new Uint32Array(sample.count)
  let count = 0
  for (let row = 0; row < sample.count; row++) {
    const start = row * sample.measures.length
    const keeps = limits.every(({ column, min, max }) => {
      const value = sample.values[start + column] ?? NaN
      return value >= min && value <= max
    })
    if (keeps) kept[count++] = row
  }
  return kept.subarray(0, count)
}

/** Every line's heights in px, `axes.length` a row: reckoned once, drawn often. */
export function lineHeights(sample: Sample, axes: readonly LineAxis[]): Float32Array {
  const heights = new Float32Array(sample.count * axes.length)
  axes.forEach(({ measure, scale }, place) => {
    const column = sample.measures.indexOf(measure)
    const [from = 0, to = 1] = scale.domain()
    const [bottom = 0, top = 0] = scale.range()
    const slope = (top - bottom) / (to - from)
    for (let row = 0; row < sample.count; row++) {
      const value = sample.values[row * sample.measures.length + column] ?? NaN
      heights[row * axes.length + place] = bottom + (value - from) * slope
    }
  })
  return heights
}
