import type { Blend } from './blend'
import type { Measure } from './measure'
import { NOISE_PART } from '../noise'

/** Values of measures by id, in each measure's unit; one that can't be reckoned is left out. */
export type MeasureValues = Readonly<Record<string, number>>

/** How a value stands to a reference: which way it differs, or that the measure can't tell. */
export type Standing = 'tie' | 'more' | 'less'

/** One measure of a blend beside the same measure of a reference, in the measure's unit. */
export interface Difference {
  readonly measure: string
  readonly value: number
  readonly reference: number
  /** Value less reference. */
  readonly by: number
  readonly standing: Standing
}

/** One oil whose share differs between two blends, in percent of oil weight. */
export interface ShareChange {
  readonly oil: string
  readonly from: number
  readonly to: number
  /** Percentage points, above 0 for a rise. */
  readonly by: number
  readonly kind: 'left' | 'came' | 'more' | 'less'
}

/**
 * How a difference in a measure's unit stands to what the measure can tell apart: under the tie it is
 * a tie, never a win; at the tie or over it is told by its direction.
 */
export function standingOf(by: number, tie: number): Standing {
  if (Math.abs(by) < tie * (1 - NOISE_PART)) return 'tie'
  return by > 0 ? 'more' : 'less'
}

/** The differences of all measures that both sides have, in the order of `measures`. */
export function differences(
  measures: readonly Measure[],
  values: MeasureValues,
  reference: MeasureValues,
): Difference[] {
  return measures.flatMap(({ id, tie }) => {
    const [value, other] = [values[id], reference[id]]
    if (value === undefined || other === undefined) return []
    const by = value - other
    return [{ measure: id, value, reference: other, by, standing: standingOf(by, tie) }]
  })
}

/** Whether a measure tells any two of some values apart: their span reaches its tie. */
export function differAtAll(values: readonly number[], tie: number): boolean {
  if (values.length < 2) return false
  return standingOf(Math.max(...values) - Math.min(...values), tie) !== 'tie'
}

/** Changes of a share under this are not worth a word, in percentage points: they round to nothing. */
export const UNTOLD_SHARE_POINTS = 0.5

/**
 * What changes in the oils from one blend to another, the largest change first. Changes under half a
 * percentage point are left out.
 */
export function shareChanges(from: Blend, to: Blend): ShareChange[] {
  const oils = new Set([...Object.keys(from), ...Object.keys(to)])
  return [...oils]
    .map((oil) => changeOf(oil, from[oil] ?? 0, to[oil] ?? 0))
    .filter(({ by }) => Math.abs(by) >= UNTOLD_SHARE_POINTS)
    .sort((a, b) => Math.abs(b.by) - Math.abs(a.by))
}

function changeOf(oil: string, from: number, to: number): ShareChange {
  const rises = to > from ? ('more' as const) : ('less' as const)
  const kind = to === 0 ? 'left' : from === 0 ? 'came' : rises
  return { oil, from, to, by: to - from, kind }
}

/** The measures that say what a bar is like: all but its price. */
export function barMeasures(measures: readonly Measure[]): Measure[] {
  return measures.filter(({ unit, shown }) => unit === 'points' && shown)
}

/**
 * How far one bar lies from another, in ties: the sum over the shown acid measures of the difference
 * as a part of that measure's tie. Every tie weighs the same, so no measure's scale is favoured (an
 * assumption of this project). Under 1 no measure at all can tell the two apart.
 */
export function barDistance(
  measures: readonly Measure[],
  values: MeasureValues,
  reference: MeasureValues,
): number {
  const told = differences(barMeasures(measures), values, reference)
  const ties = new Map(measures.map(({ id, tie }) => [id, tie]))
  return told.reduce((sum, { measure, by }) => sum + Math.abs(by) / (ties.get(measure) ?? NaN), 0)
}
