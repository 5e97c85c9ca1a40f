import { type Blend, normalised, type Prices } from '../../blend/blend'
import { checkBlend, type Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { blendValue } from '../../blend/values'
import { type Brief, pricesOf } from '../brief/brief'
import { quantilesOf, type Quantile } from '../../chance/quantiles'
import { prepared } from './prepare'
import { drawPrices, type PriceMoves } from './price-draws'
import { PriceSolver } from './price-solver'

/** Prices that move together, and the formula that might be held meanwhile. */
export interface TogetherOrder extends PriceMoves {
  /** The formula in use, whose oils all have prices; the cheapest at today's prices if left out. */
  readonly hold?: Blend | undefined
}

/** A formula that was the cheapest in some of the draws. */
export interface Winner {
  readonly blend: Blend
  /** In how many draws. */
  readonly wins: number
  /** In what part of all draws, 0 to 1. */
  readonly winsFraction: number
  /** Its cost over all draws, won or not: the mean, money per kg. */
  readonly meanCost: number
}

/** What may come of it. */
export interface Together {
  readonly status: 'found'
  readonly draws: number
  /** The most frequent winner first. */
  readonly winners: readonly Winner[]
  /** The formula in use; how often no other was cheaper, to a millionth of its cost. */
  readonly held: Winner
  /** Cost of the cheapest formula of each draw, of the one in use, and what holding that costs more. */
  readonly best: readonly Quantile[]
  readonly holding: readonly Quantile[]
  readonly extra: readonly Quantile[]
  /** Mean of what holding costs more, money per kg. */
  readonly meanExtra: number
  /** Part of the draws in which even the cheapest costs more than was wished; null where nothing was. */
  readonly overWishFraction: number | null
}

/** What came of it, or why nothing did. */
export type TogetherAnswer =
  | Together
  | { readonly status: 'infeasible'; readonly conflict: readonly string[] }
  /** Under rules: a search was not settled. */
  | { readonly status: 'undecided'; readonly bound: number }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Shares are told apart to so many decimals of a percent when formulas are counted. */
const SHARE_DECIMALS = 4

/** Costs nearer than this part of their size are one. */
const SAME_COST = 1e-6

/** More draws or wider spreads than these are slips of the hand. */
const MOST_DRAWS = 100_000
const MOST_SPREAD = 3
const MOST_MONTHS = 120

/**
 * Draws the prices of several oils at once and finds the cheapest blend of each draw: which formula wins
 * how often, and what holding one formula through it all may cost. The same seed gives the same answer to
 * the last figure. A most for cost is set aside and told of; rules of the brief are kept.
 */
export function pricesTogether(
  brief: Brief,
  library: Library,
  order: TogetherOrder,
): TogetherAnswer {
  const ready = prepared(brief, library)
  if (ready.status === 'invalid') return ready
  const problems = orderProblems(brief, library, order)
  if (problems.length > 0) return { status: 'invalid', problems }
  const solver = new PriceSolver(ready.brief, library)
  const today = solver.solve({})
  if (today.status === 'infeasible' || today.status === 'undecided' || today.status === 'invalid')
    return today
  const prices = pricesOf(brief)
  const tally = new Tally(library, prices, normalised(order.hold ?? today.blend), ready.costMost)
  for (const drawn of drawPrices(prices, order)) {
    const best = solver.solve(drawn)
    if (best.status === 'feasible') return { status: 'undecided', bound: best.bound }
    if (best.status !== 'optimal') return best
    tally.add({ ...prices, ...drawn }, best.blend, best.goalValue)
  }
  return tally.told()
}

/** Counts the winners as they come. */
class Tally {
  readonly #won = new Map<string, { readonly blend: Blend; wins: number }>()
  readonly #drawn: Prices[] = []
  readonly #best: number[] = []
  readonly #holding: number[] = []
  #heldWins = 0
  #overWish = 0

  constructor(
    private readonly library: Library,
    private readonly today: Prices,
    private readonly held: Blend,
    private readonly costMost: number | undefined,
  ) {}

  add(prices: Prices, blend: Blend, cost: number): void {
    const name = nameOf(blend)
    const winner = this.#won.get(name) ?? { blend, wins: 0 }
    winner.wins++
    this.#won.set(name, winner)
    const holding = blendValue(this.library, prices, COST, this.held)
    this.#drawn.push(prices)
    this.#best.push(cost)
    this.#holding.push(holding)
    if (holding - cost <= SAME_COST * Math.max(1, cost)) this.#heldWins++
    if (this.costMost !== undefined && cost > this.costMost) this.#overWish++
  }

  told(): Together {
    const best = Float64Array.from(this.#best)
    const holding = Float64Array.from(this.#holding)
    const extra = holding.map((cost, draw) => Math.max(0, cost - (best[draw] ?? NaN)))
    const draws = best.length
    return {
      status: 'found',
      draws,
      winners: [...this.#won.values()]
        .sort((a, b) => b.wins - a.wins || (nameOf(a.blend) < nameOf(b.blend) ? -1 : 1))
        .map(({ blend, wins }) => this.#winner(blend, wins)),
      held: this.#winner(this.held, this.#heldWins),
      best: quantilesOf(best),
      holding: quantilesOf(holding),
      extra: quantilesOf(extra),
      meanExtra: meanOf(extra),
      overWishFraction: this.costMost === undefined ? null : this.#overWish / draws,
    }
  }

  #winner(blend: Blend, wins: number): Winner {
    const costs = this.#drawn.map((prices) =>
      blendValue(this.library, { ...this.today, ...prices }, COST, blend),
    )
    const winsFraction = wins / this.#drawn.length
    return { blend, wins, winsFraction, meanCost: meanOf(Float64Array.from(costs)) }
  }
}

/** Formulas with the same oils in the same shares, to what no scale can tell, have one name. */
function nameOf(blend: Blend): string {
  return Object.entries(blend)
    .map(([oil, share]) => `${oil} ${share.toFixed(SHARE_DECIMALS)}`)
    .sort()
    .join(', ')
}

function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

function orderProblems(brief: Brief, library: Library, order: TogetherOrder): Problem[] {
  const { spreads, months, correlation, count, hold } = order
  const prices = pricesOf(brief)
  const within = (path: string, value: number, least: number, most: number) =>
    value >= least && value <= most
      ? []
      : [{ path, message: `It is ${value}. Give ${least} to ${most}.` }]
  const strangers = Object.keys(spreads).filter((oil) => !Object.hasOwn(brief.oils, oil))
  const unpriced = Object.keys(hold ?? {}).filter((oil) => !Object.hasOwn(prices, oil))
  return [
    ...strangers.map((oil) => ({
      path: `spreads.${oil}`,
      message: `"${oil}" is not on the shelf. Add it to oils or take it out here.`,
    })),
    ...(Object.keys(spreads).length === 0
      ? [
          {
            path: 'spreads',
            message: 'No price moves. Give at least one oil a spread, such as 0.2.',
          },
        ]
      : []),
    ...Object.entries(spreads).flatMap(([oil, spread]) =>
      within(`spreads.${oil}`, spread, 0, MOST_SPREAD),
    ),
    ...within('months', months, 0, MOST_MONTHS),
    ...within('correlation', correlation, 0, 1),
    ...(Number.isInteger(count)
      ? []
      : [{ path: 'count', message: `It is ${count}. Give a whole number.` }]),
    ...within('count', count, 1, MOST_DRAWS),
    ...(hold ? checkBlend(hold, library, 'hold') : []),
    ...unpriced.map((oil) => ({
      path: `hold.${oil}`,
      message: `"${oil}" has no price in the brief, so holding the formula has no cost. Put it on the shelf with a price.`,
    })),
  ]
}
