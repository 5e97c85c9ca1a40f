import { jsonSchemas } from '../data/json-schema'
import { SOLVER_NAMES } from '../worker/protocol'
import { askAboutBrief, ROBUST_FLAG, SOLVER_FLAG } from './ask-solver'
import type { Command } from './command'

export const solve: Command = {
  says: 'the best blend for a brief',
  flags: { ...SOLVER_FLAG, ...ROBUST_FLAG },
  flagHelp: [
    `--solver ${SOLVER_NAMES.join(' | ')}`,
    '--robust   the ranges hold for any lot of the oils',
  ],
  schema: jsonSchemas.brief,
  run: (text, flags) =>
    askAboutBrief(text, flags, (brief) => (service, solver) => service.solve(solver, brief)),
}
