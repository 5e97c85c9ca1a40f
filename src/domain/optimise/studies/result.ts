import { type Blend, normalised, type Prices, totalChange } from '../../blend/blend'
import { barDistance } from '../../blend/compare'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { blendValues } from '../../blend/values'
import type { Brief } from '../brief/brief'
import { cleaned } from '../space/found'
import { breaches, expectNone, toleranceOn } from '../space/verify'
import type { Role, StudyQuestion, StudyResult } from './question'

/** What all results of one study share. */
export interface StudyFrame {
  /** The brief as the maker wrote it. */
  readonly brief: Brief
  readonly library: Library
  readonly question: StudyQuestion
}

/**
 * A result from shares by oil, checked from the oils alone against the limits it was found under; throws
 * UnsoundAnswer where it does not keep them. What it breaks of the maker's own brief is listed.
 */
export function resultOf(
  frame: StudyFrame,
  shares: Blend,
  role: Role,
  foundUnder: Brief,
): StudyResult {
  const { brief, library, question } = frame
  const { base, prices } = question
  const blend = cleaned(shares)
  const wrong = givesOf(foundUnder, blend, prices, library)
  expectNone(wrong, "A study's blend breaks what it was found under")
  const measures = blendValues(library, prices, blend)
  return {
    role,
    blend,
    measures,
    movedTies: barDistance(library.measures, measures, blendValues(library, prices, base)),
    changePoints: totalChange(normalised(base), blend),
    gives: givesOf(brief, blend, prices, library),
    unpriced: Object.keys(blend).filter((oil) => !(oil in prices)),
  }
}

/**
 * Paths of a brief's limits that a blend breaks. Cost is reckoned with all prices known, for oils off
 * the shelf too; where one is missing nobody can say that the limit is broken.
 */
export function givesOf(brief: Brief, blend: Blend, prices: Prices, library: Library): string[] {
  const { [COST]: limits, ...measures } = brief.measures
  const broken = breaches({ ...brief, measures }, blend, library).map(pathOf)
  const cost = blendValues(library, prices, blend)[COST]
  if (cost === undefined || limits === undefined) return broken
  const slack = toleranceOn(COST, cost)
  if (cost < (limits.min ?? -Infinity) - slack) broken.push(`measures.${COST}.min`)
  if (cost > (limits.max ?? Infinity) + slack) broken.push(`measures.${COST}.max`)
  return broken
}

/** The path of a breach, which goes on with the value after a colon. */
function pathOf(breach: string): string {
  return breach.split(': ')[0] ?? breach
}

/** The results of which none repeats another: a later one within `points` of total change goes. */
export function distinct(results: readonly StudyResult[], points: number): StudyResult[] {
  const kept: StudyResult[] = []
  for (const result of results) {
    if (kept.every(({ blend }) => totalChange(blend, result.blend) >= points)) kept.push(result)
  }
  return kept
}
