import type { Prices } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { fractionFromPercent } from '../../units'
import { BlendSpace } from '../blend-space'
import { type Brief, goalMeasure, pricesOf } from '../brief'
import { checkBrief } from '../check-brief'
import { conflictOf } from '../reasons'
import { measureGoal } from '../reasons/goal'
import type { SearchBudget } from '../rules/allowance'
import { statesRules } from '../rules/brief-rules'
import { checkedFound } from '../rules/checked'
import { type Answer, solveBrief } from '../solve'
import { solveWithOwn } from '../solvers/own'
import { UnsoundAnswer } from '../verify'
import { isPriced, withPrices } from './prices'

/**
 * Programs that a search under rules may solve: about a second (see `searchFor`). A count and not a
 * time, so that an answer is the same on every machine.
 */
const SEARCH: SearchBudget = { timeMs: Infinity, nodes: 20_000 }

/** Solver and first basis of a brief whose limits do not move with the prices. */
interface Kept {
  readonly space: BlendSpace
  /** Where every search starts; undefined where no blend keeps the limits. */
  readonly start: Uint8Array | undefined
}

/**
 * Solves one brief under one set of prices after another. An answer depends on the brief and the prices
 * alone, to the last bit, and never on what was asked before: every search starts from the same basis,
 * built afresh, so that among equally good blends the same one is found in any order of questions.
 *
 * The space is kept where prices are not in its limits, the goal is a measure and there are no rules;
 * any other brief is solved anew each time.
 */
export class PriceSolver {
  #kept: Kept | undefined
  #conflict: readonly string[] | undefined

  constructor(
    private readonly brief: Brief,
    private readonly library: Library,
  ) {}

  /** The best blend under prices in money per kg, which go before those the brief states. */
  solve(prices: Prices): Answer {
    const brief = withPrices(this.brief, prices)
    const problems = checkBrief(brief, this.library)
    if (problems.length > 0) return { status: 'invalid', problems }
    if (!keepsSpace(brief)) return solveBrief(brief, this.library, solveWithOwn, SEARCH)
    const { space, start } = (this.#kept ??= this.#keep())
    if (!start) return { status: 'infeasible', conflict: this.#conflictAtAnyPrice() }
    const best = bestFrom(space, start, costOf(space, brief))
    const sign = 'maximise' in brief.goal ? -1 : 1
    return {
      status: 'optimal',
      ...checkedFound(brief, this.library, best.x, sign * best.objective),
    }
  }

  #keep(): Kept {
    const space = new BlendSpace(withoutPrices(this.brief), this.library)
    const first = isPriced(this.brief)
      ? costOf(space, this.brief)
      : new Float64Array(space.oils.length)
    return { space, start: space.least(first) && space.simplex.saveBasis() }
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

/** The goal as a cost to make least, of one percent of each oil. */
function costOf(space: BlendSpace, brief: Brief): Float64Array {
  const goal = goalMeasure(brief.goal) === COST ? undefined : measureGoal(space)
  if (goal) return goal.cost
  const prices = pricesOf(brief)
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
