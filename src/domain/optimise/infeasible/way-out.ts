import type { Library } from '../../blend/library'
import type { Brief } from '../brief/brief'
import { limitsOf, withLimit } from '../brief/limits'
import { withoutRules } from '../brief/brief-rules'
import { bestBlend } from '../search/best-blend'
import type { Found } from '../brief/answer'
import { solveWithOwn } from '../../lp/solvers/own'
import type { LimitChange } from '../brief/answer'
import { nearestFeasible } from './nearest'

/** A way out of a clash in which several limits give way together. */
export interface WayOut {
  /** The limits that do, each rounded to the side that works. */
  readonly changes: readonly LimitChange[]
  /** The best blend that they open. */
  readonly found: Found
}

/**
 * The least that lets a blend be found, over all limits of a brief without one (see `nearestFeasible`).
 * Rules are kept; undefined where they leave no blend even then.
 */
export function nearestWayOut(brief: Brief, library: Library): WayOut | undefined {
  const nearest = nearestFeasible(withoutRules(brief), library)
  if (nearest.status !== 'found') return undefined
  const limits = new Map(limitsOf(brief).map((limit) => [limit.path, limit]))
  const eased = nearest.changes.reduce((kept, { limit: path, to }) => {
    const limit = limits.get(path)
    return limit ? withLimit(kept, limit, to) : kept
  }, brief)
  const found = bestBlend(eased, library, solveWithOwn)
  return found && { changes: nearest.changes, found }
}
