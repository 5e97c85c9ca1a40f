import type { Brief } from '../domain/optimise/brief/brief'
import type { Answer } from '../domain/optimise/brief/answer'
import { type BlendSpread, DEFAULT_DRAWS } from '../domain/optimise/lots/spread'
import type { Draws } from '../domain/optimise/lots/draws'
import type { Question } from '../worker/client'
import type { TimeLimit } from '../worker/protocol'
import { askAboutBrief, BRIEF_SCHEMA, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import { allInvalid, type Command } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'
import { readNumber } from './number-flag'

const DRAW_LIMITS = { least: 1, most: 1_000_000, whole: true }
const SEED_LIMITS = { least: 0, most: 4_294_967_295, whole: true }

export const spread: Command = {
  flags: {
    draws: { type: 'string', default: String(DEFAULT_DRAWS.count) },
    seed: { type: 'string', default: String(DEFAULT_DRAWS.seed) },
    ...ROBUST_FLAG,
    ...TIME_FLAG,
    ...OILS_FLAG,
  },
  flagHelp: [
    `--draws n        random lots of each oil (${DEFAULT_DRAWS.count})`,
    `--seed n         the same seed gives the same figures (${DEFAULT_DRAWS.seed})`,
    '--robust         of the blend whose ranges hold for any lot',
    TIME_HELP,
    OILS_HELP,
  ],
  schema: BRIEF_SCHEMA,
  run: async (text, flags, around) => {
    const count = readNumber(flags.draws, '--draws', DRAW_LIMITS)
    const seed = readNumber(flags.seed, '--seed', SEED_LIMITS)
    const problems = [count, seed].flatMap((read) => ('problem' in read ? [read.problem] : []))
    if ('problem' in count || 'problem' in seed) return allInvalid(problems)
    const draws = { count: count.value, seed: seed.value }
    return askAboutBrief(text, flags, around, {
      question: (brief, limit) => spreadOfBest(brief, draws, limit),
    })
  },
}

/** The price of holding any lot as it is told: the goals of both ways, null where a way has no blend. */
interface ToldPrice {
  readonly typicalGoal: number | null
  readonly robustGoal: number | null
  /** In the goal's unit, 0 or more; null where either way has no blend that is proved the best. */
  readonly price: number | null
}

type SpreadAnswer =
  | Answer
  | (Answer & {
      readonly draws: Draws
      readonly spread: BlendSpread
      readonly robustPrice: ToldPrice
    })

function spreadOfBest(brief: Brief, draws: Draws, limit: TimeLimit): Question<SpreadAnswer> {
  return async (service, solver) => {
    const answer = await service.solve(solver, brief, limit)
    if (!('blend' in answer)) return answer
    const both = await service.robustPrice(brief, limit)
    const goalOf = (one: Answer | undefined) => (one && 'blend' in one ? one.goalValue : null)
    return {
      ...answer,
      draws,
      spread: await service.spread(answer.blend, draws),
      robustPrice: {
        typicalGoal: goalOf(both?.typical),
        robustGoal: goalOf(both?.robust),
        price: both?.price ?? null,
      },
    }
  }
}
