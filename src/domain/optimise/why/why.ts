import type { Library } from '../../blend/library'
import { WHOLE_PERCENT } from '../../units'
import { measureRange } from '../ranges/attainable-linear'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { goalMeasure } from '../brief/brief'
import { type Limit, limitsOf } from '../brief/limits'
import type { Interval } from '../../interval'
import { costCurve, type CurvePoint } from '../sensitivity/cost-curve'
import { type LimitReason, type Reasons, reasonsFor } from './reasons'
import type { Found } from '../brief/answer'

/** The best goal value while one limit alone moves. */
export interface WhyCurve {
  readonly limit: Limit
  readonly reason: LimitReason
  /** Straight between its points; in the limit's unit and the goal's. */
  readonly points: readonly CurvePoint[]
}

/** What holds an answer where it is. */
export interface Why {
  readonly reasons: Reasons
  /** The limits that are worth most, most first. */
  readonly curves: readonly WhyCurve[]
}

/** Curves shown at once. */
const MOST_CURVES = 4

/** How far a curve runs to each side of its limit, as a part of what the limit's subject can range over. */
const REACH = 0.2

/** Why the best blend of a sound brief is what it is; undefined where the goal has no prices. */
export function whyBest(brief: Brief, found: Found, library: Library): Why | undefined {
  if (goalMeasure(brief.goal) === undefined) return undefined
  const space = new BlendSpace(brief, library)
  const reasons = reasonsFor(brief, library, { space, blend: found.blend })
  if (!reasons) return undefined
  const stated = limitsOf(brief)
  const curves = reasons.limits
    .flatMap((reason) => {
      const limit = stated.find(({ path }) => path === reason.limit)
      return limit ? [{ limit, reason, span: spanOf(limit, space) }] : []
    })
    .sort((a, b) => worthOver(b) - worthOver(a))
    .slice(0, MOST_CURVES)
    .map(({ limit, reason, span }) => {
      const reach = REACH * (span.max - span.min)
      const [from, to] = [limit.value - reach, limit.value + reach]
      return { limit, reason, points: costCurve(space, limit.path, from, to) }
    })
  return { reasons, curves }
}

/** What giving way is worth over the limit's whole range: limits in points and in percent compare by it. */
function worthOver({ reason, span }: { reason: LimitReason; span: Interval }): number {
  return reason.worthPerUnit.relax * (span.max - span.min)
}

/** What the subject of a limit can range over on this shelf. */
function spanOf(limit: Limit, space: BlendSpace): Interval {
  if (limit.kind !== 'measure') return { min: 0, max: WHOLE_PERCENT }
  for (const measure of space.measures) space.limit(measure, {})
  const range = measureRange(space, limit.subject)
  space.restoreAll()
  return range ?? { min: limit.value, max: limit.value }
}
