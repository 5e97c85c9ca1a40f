import { measureOf } from '../../blend/library'
import type { LinearRow } from '../../lp/program'
import { Simplex } from '../../lp/simplex/simplex'
import { WHOLE_PERCENT } from '../../units'
import type { BlendSpace } from '../space/blend-space'
import { rowName } from '../space/formulate'
import type { Limit } from '../brief/limits'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { type LimitPlace, placesOf } from '../space/limit-place'

/** By how much one limit gives way, in its unit. */
export interface Give {
  readonly limit: Limit
  /** The value it must give way to, unrounded. */
  readonly to: number
}

/** The least relaxation of a brief: what gives way, and the weighted total in units. */
export interface ElasticAnswer {
  readonly gives: readonly Give[]
  readonly units: number
}

/** Gives below this many units are the solver's rounding, unless less than that is missing in all. */
const NO_GIVE_UNITS = 1e-7
/** The part of all that is missing below which a give is rounding in any case. */
const NO_GIVE_PART = 1e-3

/**
 * How many units one step of a limit counts for. A unit of a measure is its tie, the least difference
 * that can be told apart: a wish that gives way by less is not missed in the bar. A unit of a share is
 * one percentage point, although its tie would be wider: limits on oils are facts of the shelf, the
 * label or the purse more often than tastes, and recipes are written in whole percents. So where either
 * would do, a taste gives way by five points before an oil by more than one percent.
 */
export function unitsPer(space: BlendSpace, { kind, subject }: Limit): number {
  return kind === 'measure' ? 1 / measureOf(space.library, subject).tie : 1
}

/**
 * The least weighted relaxation that lets a blend be found: the elastic program, in which every limit not
 * locked may give way at a price of `unitsPer` (J.W. Chinneck, Feasibility and Infeasibility in
 * Optimization (2008), chapter 6). Shares stay within 0 to 100 %. Undefined where the locked limits
 * alone leave no blend.
 */
export function leastRelaxation(
  space: BlendSpace,
  locked: readonly string[],
): ElasticAnswer | undefined {
  const places = placesOf(space)
  const oils = space.oils.length
  const most = places.map(({ limit }) => (locked.includes(limit.path) ? 0 : Infinity))
  const prices = places.map(({ limit }) => unitsPer(space, limit))
  const simplex = new Simplex({
    cost: [...new Array<number>(oils).fill(0), ...prices],
    lower: new Float64Array(oils + places.length),
    upper: [...new Array<number>(oils).fill(WHOLE_PERCENT), ...most],
    rows: [
      wholeRow(space, places.length),
      ...places.map((place, k) => elasticRow(place, oils + k, oils + places.length)),
    ],
  })
  const outcome = simplex.solve()
  if (outcome.status === 'unbounded')
    throw new UnsoundAnswer('A relaxation of positive prices was called unbounded')
  if (outcome.status === 'infeasible') return undefined
  const least = Math.min(NO_GIVE_UNITS, NO_GIVE_PART * outcome.objective)
  const gives = places.flatMap(({ limit }, k): Give[] => {
    const give = outcome.x[oils + k] ?? NaN
    if (give * (prices[k] ?? NaN) <= least) return []
    return [{ limit, to: limit.value + (limit.side === 'min' ? -give : give) }]
  })
  return { gives, units: outcome.objective }
}

/** The space's row of the whole; the further variables, `gives` of them, are no shares. */
export function wholeRow({ program, oils }: BlendSpace, gives: number): LinearRow {
  const sum = program.rows.find(({ name }) => name === rowName.sum)
  if (!sum) throw new Error('A space has a row for the sum of its shares')
  const coefficients = new Float64Array(oils.length + gives)
  coefficients.set(sum.coefficients)
  return { coefficients, lower: sum.lower, upper: sum.upper }
}

/**
 * quantity + give ≥ least, or quantity − give ≤ most: a row for each end, so that crossed ends part.
 * `give` is the variable's place, `perGive` what the limit moves for one of it, in the limit's unit.
 */
export function elasticRow(
  { limit, perPercent }: LimitPlace,
  give: number,
  width: number,
  perGive = 1,
): LinearRow {
  const down = limit.side === 'min'
  const coefficients = new Float64Array(width)
  coefficients.set(perPercent)
  coefficients[give] = down ? perGive : -perGive
  return {
    coefficients,
    lower: down ? limit.value : -Infinity,
    upper: down ? Infinity : limit.value,
  }
}
