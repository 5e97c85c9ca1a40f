import { jsonSchemas } from '../data/json-schema'
import { askAboutBrief, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import type { Command } from './command'

export const range: Command = {
  says: 'the true least and most of every measure and every oil’s share',
  flags: { ...ROBUST_FLAG, ...TIME_FLAG },
  flagHelp: ['--robust         the ranges hold for any lot of the oils', TIME_HELP],
  schema: jsonSchemas.brief,
  run: (text, flags) =>
    askAboutBrief(text, flags, (brief, limit) => (service) => service.range(brief, limit)),
}
