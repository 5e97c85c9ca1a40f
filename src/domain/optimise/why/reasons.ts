import type { Blend } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { statesRules } from '../brief/brief-rules'
import { expectSameGoal } from '../space/found'
import { measureGoal, type MeasureGoal } from '../space/goal'
import { type LimitWorth, limitWorths } from '../sensitivity/limit-worths'
import {
  isCostHeldUp,
  type OilIn,
  type OilOut,
  oilPrices,
  type OilPrices,
} from '../sensitivity/oil-prices'
import { sentencesOf } from '../words/sentences'
import { plainWords, type Words } from '../words/words'

/** What one limit that decides the answer is worth. */
export interface LimitReason {
  /** Path of the limit. */
  readonly limit: string
  /**
   * Change of the best goal value per unit of the limit (a point, a percentage point, or money per kg),
   * in the goal's unit, 0 or more. `relax`: how much better it gets when the limit gives way. `tighten`:
   * how much worse it gets when the limit asks more; null where no blend is left, or where the limit
   * stands at the other end of its range. The two differ where the answer sits at a bend.
   */
  readonly worthPerUnit: { readonly relax: number; readonly tighten: number | null }
  /**
   * Values of the limit, rising, between which these hold: from the present value to the end on the side
   * where it gives way `relax` holds, to the other end `tighten`. Where both are the same it is the whole
   * stretch over which the price is that. An end is the value itself where `tighten` is null, and null
   * where the price holds without end.
   */
  readonly span: readonly [number | null, number | null]
}

/** Why the best blend of a feasible brief is what it is. */
export interface Reasons {
  /** Limits for which a move changes the best goal value or leaves no blend. */
  readonly limits: readonly LimitReason[]
  /** Only where the goal is the least cost; else empty. */
  readonly oilsOut: readonly OilOut[]
  /** Only where the goal is the least cost; else empty. */
  readonly oilsIn: readonly OilIn[]
  /** All of it in words. */
  readonly sentences: readonly string[]
}

/** What may be at hand already. */
export interface ReasonsOptions {
  /** The brief's own space, to go on from its last answer; its wishes are put back, its cost is changed. */
  readonly space?: BlendSpace | undefined
  /** The best blend that the reasons are about; where several are best, oils out and in depend on which. */
  readonly blend?: Blend | undefined
  /** How money is written; plain figures without a currency by default. */
  readonly words?: Words | undefined
}

/**
 * The reasons of a sound brief's best blend; undefined where it has none (see `conflictOf`). All prices
 * are true one-sided slopes of the best goal value, found by parametric passes, so they hold for
 * degenerate answers, oils with the same figures and alternative best blends. There are no such prices
 * where the goal is to stay closest to a blend, nor under rules on which oils are used, where the best
 * value jumps; a sentence says so.
 */
export function reasonsFor(
  brief: Brief,
  library: Library,
  { space = new BlendSpace(brief, library), blend, words = plainWords }: ReasonsOptions = {},
): Reasons | undefined {
  if (statesRules(brief)) return { ...NONE, sentences: [NOT_UNDER_RULES] }
  space.restoreAll()
  const goal = measureGoal(space)
  const best = space.least(goal?.cost ?? new Float64Array(space.oils.length))
  if (!best) return undefined
  if (!goal) return { ...NONE, sentences: [NOT_FOR_CLOSEST] }
  const { objective } = best
  const shares = blend ? sharesOf(space, blend, goal, objective) : best.x.slice()
  const worths = limitWorths(space, shares)
  const prices = pricesFor(space, goal, shares, objective)
  return {
    limits: worths.map(limitReason),
    oilsOut: prices?.oilsOut ?? [],
    oilsIn: prices?.oilsIn ?? [],
    sentences: sentencesOf({ space, goal, objective, worths, prices, words }),
  }
}

const NONE = { limits: [], oilsOut: [], oilsIn: [] }

const NOT_FOR_CLOSEST =
  'The goal is to stay close to a blend, so no limit has a worth and no oil a price at which it ' +
  'would come in. Choose a measure to have most or least of to see them.'

const NOT_UNDER_RULES =
  'The brief has rules on which oils are used, so the best value jumps from one choice of oils to ' +
  'another and no limit or oil has a steady price. Take the rules out to see them.'

/** The shares of a blend that is said to be best, checked to be so. */
function sharesOf(
  space: BlendSpace,
  blend: Blend,
  goal: MeasureGoal,
  objective: number,
): Float64Array {
  space.check.expectKept(blend)
  const shares = Float64Array.from(space.oils, (oil) => blend[oil] ?? 0)
  const value = goal.cost.reduce((sum, one, oil) => sum + one * (shares[oil] ?? NaN), 0)
  expectSameGoal(value, objective)
  return shares
}

function pricesFor(
  space: BlendSpace,
  { measure, sense }: MeasureGoal,
  shares: ArrayLike<number>,
  objective: number,
): OilPrices | undefined {
  if (measure !== COST || sense !== 'minimise' || isCostHeldUp(space, objective)) return undefined
  return oilPrices(space, shares)
}

function limitReason({ place, relax, tighten }: LimitWorth): LimitReason {
  const { path, value, side } = place.limit
  const relaxEnd = relax.until
  const tightenEnd = tighten ? tighten.until : value
  return {
    limit: path,
    worthPerUnit: { relax: relax.perUnit, tighten: tighten?.perUnit ?? null },
    span: side === 'min' ? [relaxEnd, tightenEnd] : [tightenEnd, relaxEnd],
  }
}
