import { type Alternative, checkedAlternative } from './checked'
import { DISTINCT_PERCENT } from './alternatives-linear'
import type { Slack } from './slack'
import { changeToNearest, mostDistinct } from './distinct'
import { slackAmount } from './slack'
import type { BlendSpace } from '../space/blend-space'
import { blendPool } from './pool-ruled'
import { Allowance, type SearchBudget } from '../search/allowance'
import { type Gap, gapBetween } from '../brief/answer'
import { goalQuestion } from '../search/goal-question'
import { objectiveOf, type RuledQuestion } from '../search/question'
import { searchFor } from '../search/search'

/** What to look for under rules. */
export interface RuledAlternativesOrder {
  readonly slack: Slack
  /** How many blends, the best among them; 1 or more. */
  readonly count: number
  /** A whole number; the same seed gives the same blends, unless time runs out. */
  readonly seed: number
}

/** Blends within the slack, the best first, then each the most different from those before it. */
export type RuledAlternatives =
  | (FoundAlternatives & { readonly status: 'optimal' })
  /** The first blend is the best found in time, with its gap; the slack is counted from it. */
  | (FoundAlternatives & { readonly status: 'feasible' } & Gap)
  /** Time ran out before any blend was found; if there is one its goal is no better than the bound. */
  | { readonly status: 'undecided'; readonly bound: number }
  | { readonly status: 'infeasible' }

interface FoundAlternatives {
  readonly alternatives: readonly Alternative[]
  /** The worst goal that was within the slack, in the goal's unit. */
  readonly goalLimit: number
  /** The smallest total change between any two, in percentage points; undefined for a single one. */
  readonly leastChange: number | undefined
  /** Why there are fewer than asked for; undefined where there are not. */
  readonly shortage: string | undefined
}

/**
 * Part of the allowance for the best blend: the rest is for those beside it, of which any will do that
 * keeps limits, rules and slack.
 */
const SEARCHES_FOR_BEST = 2

/**
 * Blends within a slack of the best that keep all limits and rules and differ as much as possible from
 * one another, in composition: from a pool of them (`blendPool`) each next one is the one whose least
 * change from those chosen is largest. Mixtures would not keep the rules, so only the pool is chosen from.
 */
export function alternativesUnderRules(
  space: BlendSpace,
  { slack, count, seed }: RuledAlternativesOrder,
  budget?: SearchBudget,
): RuledAlternatives {
  if (!Number.isInteger(count) || count < 1)
    throw new RangeError(`The count is ${count}. Give a whole number of 1 or more.`)
  const allowance = new Allowance(budget)
  const question = goalQuestion(space)
  const best = searchFor(question, allowance.share(SEARCHES_FOR_BEST))
  if (best.status === 'infeasible' || best.status === 'undecided') return best
  const worseBy = slackAmount(slack, best.value)
  const goalLimit = best.value + question.sign * worseBy
  const near = withGoalLimit(question, goalLimit)
  const pool = count > 1 ? blendPool(near, best.shares, count, seed, allowance) : []
  const chosen = mostDistinct([best.shares], pool, count, DISTINCT_PERCENT)
  const changes = chosen.map((one, place) => changeToNearest(one, chosen.slice(0, place)))
  const { shares, value, status } = best
  const nearBest = { shares, value, slack: worseBy, isProved: status === 'optimal' }
  const found = {
    alternatives: chosen.map((one) => checkedAlternative(space.check, nearBest, one)),
    goalLimit,
    leastChange: chosen.length > 1 ? Math.min(...changes) : undefined,
    shortage: chosen.length < count ? shortageOf(chosen.length, count) : undefined,
  }
  if (best.status === 'optimal') return { status: 'optimal', ...found }
  return { status: 'feasible', ...found, ...gapBetween(best.value, best.bound) }
}

/** A question held to goals no worse than a limit, in the goal's unit. */
function withGoalLimit(question: RuledQuestion, goalLimit: number): RuledQuestion {
  const { program } = question
  const upper = objectiveOf(question, goalLimit)
  const row = { coefficients: program.cost, lower: -Infinity, upper }
  return { ...question, program: { ...program, rows: [...program.rows, row] } }
}

function shortageOf(found: number, count: number): string {
  return (
    `There are ${found} of ${count}: every other blend looked at that keeps the rules within the slack ` +
    `changes less than ${DISTINCT_PERCENT} percentage point from one of these. Allow more slack for more.`
  )
}
