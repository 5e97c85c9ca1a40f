import { askAboutBrief, BRIEF_SCHEMA, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import type { Command } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'

export const range: Command = {
  flags: { ...ROBUST_FLAG, ...TIME_FLAG, ...OILS_FLAG },
  flagHelp: ['--robust         the ranges hold for any lot of the oils', TIME_HELP, OILS_HELP],
  schema: BRIEF_SCHEMA,
  run: (text, flags, around) =>
    askAboutBrief(text, flags, around, {
      question: (brief, limit) => (service) => service.range(brief, limit),
      quick: true,
    }),
}
