import type { Slack } from '../domain/optimise/alternatives/slack'
import { fractionFromPercent } from '../domain/units'
import { askAboutBrief, BRIEF_SCHEMA, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import { allInvalid, type Command } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'
import { type Read, readNumber } from './number-flag'

const COUNT_LIMITS = { least: 1, most: 1000, whole: true }
const SEED_LIMITS = { least: 0, most: 4_294_967_295, whole: true }
const SLACK_LIMITS = { least: 0, most: 1_000_000, whole: false }

export const alternatives: Command = {
  flags: {
    slack: { type: 'string', default: '3%' },
    count: { type: 'string', default: '8' },
    seed: { type: 'string', default: '1' },
    ...ROBUST_FLAG,
    ...TIME_FLAG,
    ...OILS_FLAG,
  },
  flagHelp: [
    '--slack 3% | 0.20   how much worse than the best, in percent of it or in its unit (3%)',
    '--count n           how many, the best among them (8)',
    '--seed n            the same seed gives the same blends (1)',
    '--robust            the ranges hold for any lot of the oils',
    TIME_HELP,
    OILS_HELP,
  ],
  schema: BRIEF_SCHEMA,
  run: async (text, flags, around) => {
    const slack = readSlack(flags.slack)
    const count = readNumber(flags.count, '--count', COUNT_LIMITS)
    const seed = readNumber(flags.seed, '--seed', SEED_LIMITS)
    const problems = [slack, count, seed].flatMap((read) =>
      'problem' in read ? [read.problem] : [],
    )
    if ('problem' in slack || 'problem' in count || 'problem' in seed) return allInvalid(problems)
    const order = { slack: slack.value, count: count.value, seed: seed.value }
    return askAboutBrief(text, flags, around, {
      question: (brief, limit) => (service) => service.alternatives(brief, { ...order, ...limit }),
    })
  },
}

/** "3%" is a part of the best value, "0.2" an amount in its unit. */
function readSlack(typed: unknown): Read<Slack> {
  const text = String(typed).trim()
  const percent = text.endsWith('%')
  const read = readNumber(percent ? text.slice(0, -1) : text, '--slack', SLACK_LIMITS)
  if ('problem' in read) return read
  return {
    value: percent ? { fraction: fractionFromPercent(read.value) } : { absolute: read.value },
  }
}
