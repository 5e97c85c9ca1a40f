import { jsonSchemas } from '../data/json-schema'
import type { Brief } from '../domain/optimise/brief'
import type { Answer } from '../domain/optimise/solve'
import type { Reasons } from '../domain/optimise/reasons'
import type { Question } from '../worker/client'
import { SOLVER_NAMES } from '../worker/protocol'
import { askAboutBrief, ROBUST_FLAG, SOLVER_FLAG } from './ask-solver'
import type { Command } from './command'

export const solve: Command = {
  says: 'the best blend for a brief',
  flags: { ...SOLVER_FLAG, ...ROBUST_FLAG, why: { type: 'boolean' } },
  flagHelp: [
    `--solver ${SOLVER_NAMES.join(' | ')}`,
    '--why      what each limit is worth, and the prices at which oils come in and go out',
    '--robust   the ranges hold for any lot of the oils',
  ],
  schema: jsonSchemas.brief,
  run: (text, flags) => askAboutBrief(text, flags, flags.why === true ? withReasons : plainly),
}

function plainly(brief: Brief): Question<Answer> {
  return (service, solver) => service.solve(solver, brief)
}

function withReasons(brief: Brief): Question<Answer & { readonly reasons?: Reasons | undefined }> {
  return async (service, solver) => {
    const answer = await service.solve(solver, brief)
    if (answer.status !== 'optimal') return answer
    return { ...answer, reasons: await service.reasons(brief, answer) }
  }
}
