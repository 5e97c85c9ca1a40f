import type { Library } from '../blend/library'
import { COST } from '../blend/measure'
import type { Brief } from './brief'
import { type Limit, limitsOf, withLimit } from './limits'
import type { LinearProgram, Row, SolveProgram } from './program'
import { rowValue } from './program'
import { shareProgram } from './brief-program'
import { bestBlend, type Found } from './solve'

/** One change to one limit that lets a blend be found with every other limit kept. */
export interface Relaxation {
  readonly limit: string
  readonly from: number
  /** The nearest value that works, rounded to the side that works. */
  readonly to: number
  readonly found: Found
}

/** Steps to which a freed limit is rounded: a tenth of a point or percent, a cent of money per kg. */
const STEP = 0.1
const MONEY_STEP = 0.01

/** A value that stands this small a part of a step beside a mark is that mark, and solver's noise. */
const NOISE_STEPS = 1e-5

/**
 * For each limit of a conflict the least change of it alone that frees the brief; limits for which no
 * value would do are left out. One solve for the change and one for the blend it opens.
 */
export function relaxations(
  brief: Brief,
  conflict: readonly string[],
  library: Library,
  solve: SolveProgram,
): Relaxation[] {
  return limitsOf(brief)
    .filter(({ path }) => conflict.includes(path))
    .flatMap((limit) => {
      const nearest = nearestValue(brief, limit, library, solve)
      if (nearest === undefined) return []
      for (const to of marksBeyond(nearest, limit)) {
        const found = bestBlend(withLimit(brief, limit, to), library, solve)
        if (found) return [{ limit: limit.path, from: limit.value, to, found }]
      }
      return []
    })
}

/** The value nearest to the limit that the rest of the brief can reach. */
function nearestValue(
  brief: Brief,
  limit: Limit,
  library: Library,
  solve: SolveProgram,
): number | undefined {
  const program = shareProgram(withLimit(brief, limit, undefined), library)
  const terms = termsUnder(brief, limit, library)
  const outcome = solve(towards(program, terms, limit.side === 'min' ? 'max' : 'min'))
  if (outcome.status !== 'optimal') return undefined
  return rowValue({ name: limit.path, lower: 0, upper: 0, terms }, outcome.point)
}

/** What a limit limits, as coefficients of the shares. */
function termsUnder(
  brief: Brief,
  limit: Limit,
  library: Library,
): readonly (readonly [number, number])[] {
  if (limit.kind === 'oil') return [[Object.keys(brief.oils).indexOf(limit.subject), 1]]
  // A wish for any lot has a row for each side, named by its path; any other has one for both.
  const name = limit.kind === 'group' ? `groups[${limit.subject}]` : `measures.${limit.subject}`
  const isItsRow = (one: Row) => one.name === name || one.name === limit.path
  const row = shareProgram(brief, library).rows.find(isItsRow)
  if (!row) throw new Error(`The brief has no row ${name}`)
  return row.terms
}

function towards(
  program: LinearProgram,
  terms: readonly (readonly [number, number])[],
  sense: 'min' | 'max',
): LinearProgram {
  const cost = new Map(terms)
  const variables = program.variables.map((one, index) => ({ ...one, cost: cost.get(index) ?? 0 }))
  return { ...program, sense, variables }
}

/**
 * The mark at or beyond the nearest value, away from the old limit's side, and the next one: the first
 * may stand short by the noise and then be refused.
 */
function marksBeyond(value: number, limit: Limit): number[] {
  const step = limit.kind === 'measure' && limit.subject === COST ? MONEY_STEP : STEP
  const steps = value / step
  const [first, freer] =
    limit.side === 'min'
      ? [Math.floor(steps + NOISE_STEPS), -1]
      : [Math.ceil(steps - NOISE_STEPS), 1]
  return [first, first + freer].map((whole) => Number((whole * step).toFixed(2)))
}
