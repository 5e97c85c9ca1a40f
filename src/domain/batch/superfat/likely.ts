import { quickselect } from 'd3-array'
import { LEAST_TOLERANCE } from '../../blend/certificate-range'
import { type Library, oilOf } from '../../blend/library'
import type { NaturalRange } from '../../blend/oil'
import { ALKALI_MOLAR_MASS, alkaliEquivalents } from '../../chemistry/alkali'
import { percentFromFraction } from '../../units'
import { acidTakes, weakestPart, weighedAcids } from '../weigh/acid-weights'
import { DRAWS, evenRow, normalRow, shareAtMost } from './lot-draws'
import { fatEquivalents, reactingPart, saponificationOf } from '../weigh/lots'
import { alkaliShares, alkalisOf, type BatchOrder } from '../order/order'
import { contentOf, contentUpTo } from '../order/purity'
import type { Reckoning } from '../weigh/reckoning'
import type { WhichFat } from './reach'
import type { Interval } from '../../interval'
import { roundedUp } from '../weigh/rounding'

/** What 10,000 batches drawn over lots, purity and scales come to. */
export interface LikelySuperfat {
  /** Nineteen batches in twenty, percent. */
  readonly percent: Interval
  /** The share of batches that would hold free alkali, 0 to 1, with the draws' own error on top. */
  readonly freeShare: number
  /** "1 lot in n", rounded down; at the most, where none of those drawn holds any. */
  readonly oneIn: number
  /** Whether any batch drawn holds free alkali: without one, `oneIn` is a bound. */
  readonly anyFree: boolean
  /** The lye discount at which one lot in 200 would, percent, up to a tenth; null where none is enough. */
  readonly leastSafePercent: number | null
}

/** More than one lot in 200 with free alkali, and the sheet is blocked. */
export const FREE_SHARE_LIMIT = 1 / 200

/** Two-sided normal deviates of 95 and of 99 in 100. */
const Z95 = 1.959964
const Z99 = 2.575829

/**
 * A spread that somebody measured over many lots counts twice over: theirs came from one country and
 * leave out what no acid shows. An assumption.
 */
const MEASURED_COUNTS = 2

/** More lye than fat by this part is floating point: lots cut off at their low end often just use it up. */
const NOISE = 1e-11

/** What lies beyond either end of nineteen in twenty. */
const TAIL = 0.025
const OFFER_STEP_PERCENT = 0.1

/** How an oil's lots lie about the typical one: standard deviations either way, mg KOH/g. */
export interface LotSpread {
  readonly typical: number
  readonly sdLow: number
  readonly sdHigh: number
  /** No lot lies outside these, so that what is likely lies within the worst. */
  readonly low: number
  readonly high: number
}

/**
 * The spread of an oil's saponification value from lot to lot. The range of a standard that was read is
 * taken to hold 99 lots of 100, a recalled or assumed one 95, a certificate's tolerance 95: assumptions,
 * on the safe side of the one set that was measured (olive, whose range holds 7 standard deviations either
 * way). Never narrower than half a percent either way for 95 lots of 100, and cut off at the ends of the
 * range, which keeps the likely within the worst: at an end stand all lots that would lie beyond it.
 */
export function lotSpread(oil: string, library: Library, lots: BatchOrder['lots']): LotSpread {
  const { low, typical, high } = saponificationOf(oil, library, lots)
  const { basis, spread } = oilOf(library, oil).saponificationValue
  const certified = lots?.[oil]?.saponificationValue !== undefined
  const least = (typical * LEAST_TOLERANCE) / Z95
  if (!certified && spread) {
    const sd = Math.max(least, spread.sd * MEASURED_COUNTS)
    return { typical, sdLow: sd, sdHigh: sd, low, high }
  }
  const z = !certified && basis === 'published' ? Z99 : Z95
  return {
    typical,
    low,
    high,
    sdLow: Math.max(least, (typical - low) / z),
    sdHigh: Math.max(least, (high - typical) / z),
  }
}

/**
 * The likely superfat of a batch. Each oil's lot is drawn by itself (normal, its two sides apart), purity
 * evenly from what is stated to the most it may be, acids evenly down to their weakest, waxes evenly over
 * what lye may reach, each weighing evenly within half a step of the scale (or its stated error). Fat of
 * milk and the like is not counted. The same order always gives the same answer.
 */
export function likelySuperfat(reckoning: Reckoning, which: WhichFat = 'all'): LikelySuperfat {
  const { order, library, facts, weights } = reckoning
  const fat = fatDraws(reckoning, which)
  const alkali = alkaliDraws(reckoning)
  const acid = acidDraws(reckoning)
  const baseMol = fatEquivalents(weights.oilGrams, library, 'typical', order)
  const paidMol = acidTakes(weighedAcids(order, weights.acidGrams, facts), 'paid')
  const superfat = new Float64Array(DRAWS)
  const discount = new Float64Array(DRAWS)
  let free = 0
  for (let i = 0; i < DRAWS; i++) {
    const bound = (fat[i] ?? 0) + (acid[i] ?? 0)
    const [weighed, slip, purer] = [
      alkali.mol[i] ?? 0,
      alkali.slipMol[i] ?? 0,
      alkali.purer[i] ?? 1,
    ]
    superfat[i] = 1 - (weighed - (acid[i] ?? 0)) / (fat[i] ?? 0)
    discount[i] = 1 - ((bound - slip) / purer - paidMol) / baseMol
    if (weighed > bound * (1 + NOISE)) free++
  }
  const freeShare = shareAtMost(free)
  return {
    percent: {
      min: percentFromFraction(ranked(superfat, Math.floor(TAIL * (DRAWS - 1)))),
      max: percentFromFraction(ranked(superfat, Math.ceil((1 - TAIL) * (DRAWS - 1)))),
    },
    freeShare,
    oneIn: Math.floor(1 / freeShare),
    anyFree: free > 0,
    leastSafePercent: leastSafe(discount),
  }
}

/** How many of the draws may hold free alkali for the share to stay within its limit, error and all. */
function mostFree(): number {
  let hits = 0
  while (shareAtMost(hits + 1) <= FREE_SHARE_LIMIT) hits++
  return hits
}

const MOST_FREE = mostFree()

/** The figure that so many of the others lie below. */
function ranked(figures: Float64Array, rank: number): number {
  return quickselect(figures, rank)[rank] ?? NaN
}

function leastSafe(discounts: Float64Array): number | null {
  const percent = percentFromFraction(ranked(discounts, DRAWS - 1 - MOST_FREE))
  if (!(percent < 100)) return null
  return roundedUp(Math.max(0, percent), OFFER_STEP_PERCENT)
}

/** What the fat of each batch drawn binds, mol. */
function fatDraws({ order, weights, library }: Reckoning, which: WhichFat): Float64Array {
  const late = which === 'inCook' && order.extraFat?.when === 'afterCook'
  const lists = late ? [weights.oilGrams] : [weights.oilGrams, weights.extraFatGrams]
  const oils = [...new Set(lists.flatMap(Object.keys))].sort()
  const error = likelyErrorG(order.scale?.oilStepG, order.scale?.oilErrorG)
  const total = new Float64Array(DRAWS)
  oils.forEach((oil, row) => {
    const spread = lotSpread(oil, library, order.lots)
    const part = reactingPart(oilOf(library, oil), order)
    lists.forEach((grams, list) => {
      const g = grams[oil]
      if (g === undefined) return
      const rows = {
        lots: normalRow(row),
        reached: part.low < part.high ? evenRow(2 * row) : null,
        slips: error > 0 ? evenRow(2 * (row + list * oils.length) + 1) : null,
      }
      addFat(total, rows, { g, error, part, spread })
    })
  })
  return total
}

/** Adds what one weighed fat binds in each batch drawn, mol. */
function addFat(
  total: Float64Array,
  {
    lots,
    reached,
    slips,
  }: Record<'lots', Float64Array> & Record<'reached' | 'slips', Float64Array | null>,
  { g, error, part, spread }: { g: number; error: number; part: NaturalRange; spread: LotSpread },
): void {
  const { typical, sdLow, sdHigh, low, high } = spread
  const perGram = alkaliEquivalents(1, 1)
  for (let i = 0; i < DRAWS; i++) {
    const z = lots[i] ?? 0
    const value = Math.min(high, Math.max(low, typical + z * (z < 0 ? sdLow : sdHigh)))
    const reacts = reached ? part.low + (part.high - part.low) * (reached[i] ?? 0) : part.low
    const weighed = slips ? Math.max(0, g + (2 * (slips[i] ?? 0) - 1) * error) : g
    total[i] = (total[i] ?? 0) + weighed * value * reacts * perGram
  }
}

/** Rows of what is no oil begin here: no batch holds half as many oils. */
const ALKALI_ROW = 400
const ACID_ROW = 500

/** The hydroxide of each batch drawn: all of it and a slip of the scale, mol, and how much purer it is. */
function alkaliDraws({ order, weights }: Reckoning) {
  const [mol, slipMol, purer] = [zeros(), zeros(), zeros()]
  const shares = alkaliShares(order)
  const error = likelyErrorG(order.scale?.lyeStepG, order.scale?.lyeErrorG)
  alkalisOf(order).forEach((kind, index) => {
    const [stated, most] = [contentOf(order, kind), contentUpTo(order, kind)]
    const least = contentFrom(order, kind)
    const [contents, slips] = [evenRow(ALKALI_ROW + 2 * index), evenRow(ALKALI_ROW + 2 * index + 1)]
    const grams = weights.alkaliGrams[kind] ?? 0
    for (let i = 0; i < DRAWS; i++) {
      const content = least + (most - least) * (contents[i] ?? 0)
      const slipG = (2 * (slips[i] ?? 0) - 1) * error
      const slip = (slipG * content) / ALKALI_MOLAR_MASS[kind]
      slipMol[i] = (slipMol[i] ?? 0) + slip
      mol[i] = (mol[i] ?? 0) + (grams * content) / ALKALI_MOLAR_MASS[kind] + slip
      purer[i] = (purer[i] ?? 0) + (shares[kind] * content) / stated
    }
  })
  return { mol, slipMol, purer }
}

/**
 * The least pure hydroxide to draw from, as a fraction: an "at least" is kept; what is within a tolerance
 * may lie below as far as above.
 */
function contentFrom(order: BatchOrder, kind: 'naoh' | 'koh'): number {
  const stated = contentOf(order, kind)
  const bothWays =
    typeof order.purityIs?.[kind] === 'object' || order.lyeSolution?.[kind] !== undefined
  return bothWays ? Math.max(0, 2 * stated - contentUpTo(order, kind)) : stated
}

/** What the acids of each batch drawn take, mol. */
function acidDraws({ order, weights, facts }: Reckoning): Float64Array {
  const total = zeros()
  const error = likelyErrorG(order.scale?.lyeStepG, order.scale?.lyeErrorG)
  weighedAcids(order, weights.acidGrams, facts).forEach(({ use, grams, equivalentsMol }, index) => {
    const weakest = weakestPart(use, facts)
    const [parts, slips] = [evenRow(ACID_ROW + 2 * index), evenRow(ACID_ROW + 2 * index + 1)]
    const perGram = grams > 0 ? equivalentsMol / grams : 0
    for (let i = 0; i < DRAWS; i++) {
      const part = 1 - (1 - weakest) * (parts[i] ?? 0)
      const weighed = Math.max(0, grams + (2 * (slips[i] ?? 0) - 1) * error)
      total[i] = (total[i] ?? 0) + weighed * perGram * part
    }
  })
  return total
}

/** How far a weighing is likely off, g either way: half a step, as scales round, or what was stated. */
function likelyErrorG(stepG: number | undefined, errorG: number | undefined): number {
  return errorG ?? (stepG ?? 0) / 2
}

function zeros(): Float64Array {
  return new Float64Array(DRAWS)
}
