import type { Library } from '../../blend/library'
import type { Brief } from '../brief'
import { limitsOf, withLimit } from '../limits'
import { withoutRules } from '../rules/brief-rules'
import { bestBlend, type Found } from '../solve'
import { solveWithOwn } from '../solvers/own'
import { type LimitChange, nearestFeasible } from './nearest'

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
