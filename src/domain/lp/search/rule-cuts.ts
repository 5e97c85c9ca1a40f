import type { LinearRow } from '../program'
import type { Region, RuleBook } from './rule-book'
import type { CountRule } from './rules'

/**
 * Rows that every blend obeying the rules obeys, to tighten the linear relaxation. Where a variable
 * is used, x / upper is at most 1 and x / leastUse at least 1; so a group's counts bound the sums
 * of those parts, and a need ties the least use of one to the part of the other.
 */
export function relaxationCuts(book: RuleBook, region: Region): LinearRow[] {
  return [
    ...book.rules.counts.flatMap((count) => countCuts(count, book.leastUse, region)),
    ...book.rules.requires.flatMap(([variable, needed]) => {
      const upper = region.upper[variable]!
      if (upper === 0 || variable === needed) return []
      const coefficients = new Float64Array(region.use.length)
      coefficients[variable] = -(book.leastUse[needed]! / upper)
      coefficients[needed] = 1
      return [{ coefficients, lower: 0, upper: Infinity }]
    }),
  ]
}

function countCuts(
  { variables, least, most }: CountRule,
  leastUse: Float64Array,
  { upper, use }: Region,
): LinearRow[] {
  const partsOf = (wholes: Float64Array): Float64Array => {
    const coefficients = new Float64Array(use.length)
    for (const j of variables) coefficients[j] = wholes[j]! > 0 ? 1 / wholes[j]! : 0
    return coefficients
  }
  const rows: LinearRow[] = []
  if (most < variables.length) {
    rows.push({ coefficients: partsOf(upper), lower: -Infinity, upper: most })
  }
  if (least > 0) rows.push({ coefficients: partsOf(leastUse), lower: least, upper: Infinity })
  return rows
}
