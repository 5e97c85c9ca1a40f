import type { Prices } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { fractionFromPercent } from '../../units'
import { BlendSpace } from '../space/blend-space'
import { type Brief, goalMeasure, pricesOf } from '../brief/brief'
import { checkBrief } from '../brief/check-brief'
import { conflictOf } from '../infeasible/conflict-linear'
import { measureGoal } from '../space/goal'
import type { SearchBudget } from '../search/allowance'
import { statesRules } from '../brief/brief-rules'
import type { Answer, Found } from '../brief/answer'
import { solveBrief } from '../solve/solve'
import { solveWithOwn } from '../../lp/solvers/own'
import { checkedFound } from '../space/found'
import { BriefCheck } from '../space/verify'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { isPriced, withPrices } from '../brief/prices'

/**
 * Programs that a search under rules may solve: about a second (see `searchFor`). A count and not a
 * time, so that an answer is the same on every machine.
 */
const SEARCH: SearchBudget = { timeMs: Infinity, nodes: 20_000 }

/** What is kept of a brief whose limits do not move with the prices. */
interface Kept {
  readonly space: BlendSpace
  readonly check: BriefCheck
  /** Where every search starts; undefined where no blend keeps the limits. */
  readonly start: Uint8Array | undefined
}

/** Prices up to this are certainly sound, money per kg; others are looked at with the whole brief. */
const PLAIN_PRICE = 1e6

/**
 * Solves one brief under one set of prices after another. An answer depends on the brief and the prices
 * alone, to the last bit, and never on what was asked before: every search starts from the same basis,
 * built afresh, so that among equally good blends the same one is found in any order of questions.
 *
 * The space is kept where prices are not in its limits, the goal is a measure and there are no rules;
 * any other brief is solved anew each time.
 */
export class PriceSolver {
  readonly #stated: Prices
  readonly #keeps: boolean
  #kept: Kept | undefined
  #conflict: readonly string[] | undefined
  #sound: boolean | undefined

  constructor(
    private readonly brief: Brief,
    private readonly library: Library,
  ) {
    this.#stated = pricesOf(brief)
    this.#keeps = keepsSpace(brief)
  }

  /** The best blend under prices in money per kg, which go before those the brief states. */
  solve(given: Prices): Answer {
    const prices = this.#pricesWith(given)
    if (!this.#isPlain(prices)) {
      const problems = checkBrief(withPrices(this.brief, given), this.library)
      if (problems.length > 0) return { status: 'invalid', problems }
    }
    if (!this.#keeps)
      return solveBrief(withPrices(this.brief, given), this.library, solveWithOwn, SEARCH)
    const kept = (this.#kept ??= this.#keep())
    if (!kept.start) return { status: 'infeasible', conflict: this.#conflictAtAnyPrice() }
    return { status: 'optimal', ...this.#found(kept, kept.start, prices) }
  }

  /** Prices of the shelf's oils, those given before those stated. */
  #pricesWith(given: Prices): Prices {
    const prices: Record<string, number> = { ...this.#stated }
    for (const [oil, price] of Object.entries(given))
      if (Object.hasOwn(this.brief.oils, oil)) prices[oil] = price
    return prices
  }

  /** Whether there is nothing to say of the brief under these prices: it is sound, and none is odd or missing. */
  #isPlain(prices: Prices): boolean {
    this.#sound ??= checkBrief(freeOfCharge(this.brief), this.library).length === 0
    if (!this.#sound) return false
    for (const oil in this.brief.oils) {
      const price = prices[oil]
      if (!(price !== undefined && price >= 0 && price <= PLAIN_PRICE)) return false
    }
    return true
  }

  #keep(): Kept {
    const space = new BlendSpace(withoutPrices(this.brief), this.library)
    const first = isPriced(this.brief)
      ? costOf(space, this.brief, this.#stated)
      : new Float64Array(space.oils.length)
    const start = space.least(first) && space.simplex.saveBasis()
    return { space, check: new BriefCheck(this.brief, this.library), start }
  }

  /** The best blend, checked from the oils alone; throws UnsoundAnswer where that and the solver disagree. */
  #found({ space, check }: Kept, start: Uint8Array, prices: Prices): Found {
    const best = bestFrom(space, start, costOf(space, this.brief, prices))
    const claimed = 'maximise' in this.brief.goal ? -best.objective : best.objective
    return checkedFound(check, best.x, claimed, prices)
  }

  /** Which limits clash, found without the prices: where several sets do, it is always the same one. */
  #conflictAtAnyPrice(): readonly string[] {
    this.#conflict ??= conflictOf(withoutPrices(this.brief), this.library)
    if (this.#conflict.length > 0) return this.#conflict
    throw new UnsoundAnswer('The solver finds no blend, and there is one')
  }
}

/** Whether the space of a brief's blends is the same under all prices, and its goal is linear in it. */
function keepsSpace(brief: Brief): boolean {
  const { min, max } = brief.measures[COST] ?? {}
  return (
    !statesRules(brief) &&
    goalMeasure(brief.goal) !== undefined &&
    min === undefined &&
    max === undefined
  )
}

function withoutPrices(brief: Brief): Brief {
  const oils = Object.entries(brief.oils).map(([oil, { min, max }]) => [oil, { min, max }])
  return { ...brief, oils: Object.fromEntries(oils) as Brief['oils'] }
}

function freeOfCharge(brief: Brief): Brief {
  return withPrices(brief, Object.fromEntries(Object.keys(brief.oils).map((oil) => [oil, 0])))
}

/** The goal as a cost to make least, of one percent of each oil. */
function costOf(space: BlendSpace, brief: Brief, prices: Prices): Float64Array {
  const goal = goalMeasure(brief.goal) === COST ? undefined : measureGoal(space)
  if (goal) return goal.cost
  const sign = 'maximise' in brief.goal ? -1 : 1
  return Float64Array.from(space.oils, (oil) => sign * fractionFromPercent(prices[oil] ?? NaN))
}

function bestFrom(space: BlendSpace, start: Uint8Array, cost: Float64Array) {
  space.simplex.reset()
  space.simplex.restoreBasis(start)
  const best = space.least(cost)
  if (best) return best
  throw new UnsoundAnswer('The space had a blend under other prices, and has none now')
}
