import { jsonSchemas } from '../data/json-schema'
import type { Brief } from '../domain/optimise/brief/brief'
import type { Answer } from '../domain/optimise/brief/answer'
import type { Reasons } from '../domain/optimise/why/reasons'
import { type Question, SolverClient } from '../worker/client'
import { SOLVER_NAMES, type TimeLimit } from '../worker/protocol'
import { secondOpinion } from '../worker/second-opinion'
import type { Confirmation } from '../domain/optimise/solve/confirm'
import { askAboutBrief, ROBUST_FLAG, SOLVER_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import type { Command } from './command'
import { startNodeThread } from './node-thread'

export const solve: Command = {
  says: 'the best blend for a brief',
  flags: { ...SOLVER_FLAG, ...ROBUST_FLAG, ...TIME_FLAG, why: { type: 'boolean' } },
  flagHelp: [
    `--solver ${SOLVER_NAMES.join(' | ')}`,
    '--why      what each limit is worth, and the prices at which oils come in and go out',
    '--robust   the ranges hold for any lot of the oils',
    TIME_HELP,
  ],
  schema: jsonSchemas.brief,
  run: (text, flags) => {
    const asked = flags.why === true ? withReasons : plainly
    return askAboutBrief(text, flags, (brief, limit) => confirmed(brief, asked(brief, limit)))
  },
}

/** An answer of our own solver with what a second one says of it. */
function confirmed<T extends Answer>(
  brief: Brief,
  question: Question<T>,
): Question<T & { readonly secondSolver?: Confirmation }> {
  return async (service, solver) => {
    const found = await question(service, solver)
    if (!('blend' in found) || solver !== 'barwright') return found
    const client = new SolverClient(startNodeThread, 'javascript-lp-solver')
    try {
      return { ...found, secondSolver: await secondOpinion(client, brief, found) }
    } finally {
      client.close()
    }
  }
}

function plainly(brief: Brief, limit: TimeLimit): Question<Answer> {
  return (service, solver) => service.solve(solver, brief, limit)
}

function withReasons(
  brief: Brief,
  limit: TimeLimit,
): Question<Answer & { readonly reasons?: Reasons | undefined }> {
  return async (service, solver) => {
    const found = await service.solve(solver, brief, limit)
    if (found.status !== 'optimal') return found
    return { ...found, reasons: await service.reasons(brief, found) }
  }
}
