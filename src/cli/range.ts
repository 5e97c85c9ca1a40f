import { askAboutBrief, BRIEF_SCHEMA, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import type { Command } from './command'

export const range: Command = {
  flags: { ...ROBUST_FLAG, ...TIME_FLAG },
  flagHelp: ['--robust         the ranges hold for any lot of the oils', TIME_HELP],
  schema: BRIEF_SCHEMA,
  run: (text, flags) =>
    askAboutBrief(text, flags, {
      question: (brief, limit) => (service) => service.range(brief, limit),
      quick: true,
    }),
}
