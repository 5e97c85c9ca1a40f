import { BlendSpace } from '../space/blend-space'
import { withoutWishesOn } from '../brief/ranges'
import type { Interval } from '../../interval'
import { Allowance, type SearchBudget } from '../search/allowance'
import { checkedBlend } from '../space/found'
import { anyBlend, towards } from '../search/question'
import { searchFor } from '../search/search'

/** The least and most of something under rules. */
export interface RuledRange extends Interval {
  /** Proved: nothing goes beyond these. The same as least and most where these are proved. */
  readonly outer: Interval
  /** Whether both ends are proved; else a blend may lie beyond `min` or `max`, within `outer`. */
  readonly exact: boolean
}

/** The least and most of everything a brief with rules lets vary, by id. */
export type RuledAttainable =
  | ({ readonly status: 'optimal' } & RangesFound)
  /**
   * Time ran out before every end was proved. The gap is the largest part of any outer range that may
   * or may not be reached, 0 to 1.
   */
  | ({ readonly status: 'feasible'; readonly gap: number } & RangesFound)
  /** Time ran out before any blend was found. */
  | { readonly status: 'undecided' }
  | { readonly status: 'infeasible' }

interface RangesFound {
  /** In each measure's unit. */
  readonly measures: Readonly<Record<string, RuledRange>>
  /** Shares in percent of oil weight. */
  readonly oils: Readonly<Record<string, RuledRange>>
}

/** The least and most of every measure and every oil's share, with all limits and rules kept. */
export function attainableUnderRules(space: BlendSpace, budget?: SearchBudget): RuledAttainable {
  const subjects = [
    ...space.measures.map((id) => space.perPercent(id)),
    ...space.oils.map((_, oil) => shareOf(space, oil)),
  ]
  const found = rangesUnderRules(space, subjects, new Allowance(budget))
  if (typeof found === 'string') return { status: found }
  const named = (ids: readonly string[], from: number): Record<string, RuledRange> =>
    Object.fromEntries(
      found.slice(from, from + ids.length).map((one, k) => [ids[k] ?? '', one] as const),
    )
  const ranges = {
    measures: named(space.measures, 0),
    oils: named(space.oils, space.measures.length),
  }
  if (found.every(({ exact }) => exact)) return { status: 'optimal', ...ranges }
  return { status: 'feasible', gap: Math.max(...found.map(openPart)), ...ranges }
}

/** The part of an outer range that no blend met reaches and nothing rules out. */
function openPart({ min, max, outer }: RuledRange): number {
  const width = outer.max - outer.min
  return width > 0 ? (width - (max - min)) / width : 0
}

/**
 * The least and most of each measure with its own wish set aside and all other limits and rules kept;
 * missing where no blend keeps these, `undecided` where none was found in time.
 */
export function reachUnderRules(
  { brief, library, measures }: BlendSpace,
  budget?: SearchBudget,
): Record<string, RuledRange | 'undecided'> {
  const allowance = new Allowance(budget)
  const entries = measures.flatMap((id, done): [string, RuledRange | 'undecided'][] => {
    const space = new BlendSpace(withoutWishesOn(brief, [id]), library)
    const rest = measures.length - done
    const found = rangesUnderRules(space, [space.perPercent(id)], allowance, rest)
    if (found === 'infeasible') return []
    return found === 'undecided' ? [[id, found]] : found.map((range) => [id, range])
  })
  return Object.fromEntries(entries)
}

function shareOf({ oils }: BlendSpace, oil: number): Float64Array {
  return Float64Array.from(oils, (_, other) => (other === oil ? 1 : 0))
}

/** One end of a range: the best value found, if any, and what nothing goes beyond. */
interface End {
  readonly value: number | undefined
  readonly bound: number
}

/**
 * Ranges of several sums Σ value × share over the blends of a space that keep limits and rules; `rest` is
 * how many such sets of questions are to come.
 */
export function rangesUnderRules(
  space: BlendSpace,
  subjects: readonly Float64Array[],
  allowance: Allowance,
  rest = 1,
): RuledRange[] | 'undecided' | 'infeasible' {
  const met: Float64Array[] = []
  const any = anyBlend(space)
  const searches = subjects.flatMap((values) =>
    (['least', 'most'] as const).map((way) => ({ values, way })),
  )
  const ends: End[] = []
  for (const [done, { values, way }] of searches.entries()) {
    const goOn = allowance.share((searches.length - done) * rest)
    const outcome = searchFor(towards(any, values, way), goOn)
    if (outcome.status === 'infeasible') return 'infeasible'
    if (outcome.status !== 'undecided') {
      checkedBlend(space.check, outcome.shares)
      met.push(outcome.shares)
    }
    ends.push({
      value: outcome.status === 'optimal' ? outcome.value : undefined,
      bound: outcome.status === 'optimal' ? outcome.value : outcome.bound,
    })
  }
  if (met.length === 0) return 'undecided'
  return subjects.map((values, k) => {
    const least = ends[2 * k]
    const most = ends[2 * k + 1]
    return rangeBetween(values, least, most, met)
  })
}

/** A range from its ends; where one is not proved, the furthest that any blend met on the way has. */
function rangeBetween(
  values: Float64Array,
  least: End | undefined,
  most: End | undefined,
  met: readonly Float64Array[],
): RuledRange {
  const valuesMet = met.map((shares) =>
    shares.reduce((sum, x, j) => sum + x * (values[j] ?? NaN), 0),
  )
  const min = least?.value ?? Math.min(...valuesMet)
  const max = Math.max(min, most?.value ?? Math.max(...valuesMet))
  const outer = { min: Math.min(min, least?.bound ?? NaN), max: Math.max(max, most?.bound ?? NaN) }
  const exact = least?.value !== undefined && most?.value !== undefined
  return { min, max, outer, exact }
}
