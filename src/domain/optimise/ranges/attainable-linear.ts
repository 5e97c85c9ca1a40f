import { WHOLE_PERCENT } from '../../units'
import { type BlendSpace, negated } from '../space/blend-space'
import type { Interval } from '../../interval'

/** The true least and most of everything a brief lets vary, by id. */
export interface Attainable {
  /** In each measure's unit. */
  readonly measures: Readonly<Record<string, Interval>>
  /** Shares in percent of oil weight. */
  readonly oils: Readonly<Record<string, Interval>>
}

/** The least and most of every measure and of every oil's share with all limits kept; undefined where no blend keeps them. */
export function attainableRanges(space: BlendSpace): Attainable | undefined {
  const measures = rangesOf(space.measures, (id) => measureRange(space, id))
  const oils = rangesOf(space.oils, (oil) => shareRange(space, oil))
  return measures && oils && { measures, oils }
}

/** The least and most of a measure, in its unit, under the limits the space has now. */
export function measureRange(space: BlendSpace, measure: string): Interval | undefined {
  return rangeAlong(space, space.perPercent(measure))
}

/** The least and most of each measure with the wish on it set aside and all others kept; missing where they clash. */
export function reachOfMeasures(space: BlendSpace): Record<string, Interval> {
  const entries = space.measures.flatMap((measure) => {
    space.limit(measure, {})
    const range = measureRange(space, measure)
    space.restore(measure)
    return range ? [[measure, range] as const] : []
  })
  return Object.fromEntries(entries)
}

function shareRange(space: BlendSpace, oil: string): Interval | undefined {
  const range = rangeAlong(
    space,
    Float64Array.from(space.oils, (one) => Number(one === oil)),
  )
  return range && { min: Math.max(0, range.min), max: Math.min(WHOLE_PERCENT, range.max) }
}

function rangeAlong(space: BlendSpace, values: Float64Array): Interval | undefined {
  const least = space.least(values)?.objective
  if (least === undefined) return undefined
  const most = space.least(negated(values))?.objective
  return most === undefined ? undefined : { min: least, max: Math.max(least, -most) }
}

/** Ranges by id, or undefined as soon as one is missing. */
function rangesOf(
  ids: readonly string[],
  rangeOf: (id: string) => Interval | undefined,
): Record<string, Interval> | undefined {
  const ranges: Record<string, Interval> = {}
  for (const id of ids) {
    const range = rangeOf(id)
    if (!range) return undefined
    ranges[id] = range
  }
  return ranges
}
