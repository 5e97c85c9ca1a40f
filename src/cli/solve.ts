import type { Brief } from '../domain/optimise/brief/brief'
import type { Answer } from '../domain/optimise/brief/answer'
import type { Reasons } from '../domain/optimise/why/reasons'
import type { Confirmation } from '../domain/optimise/solve/confirm'
import type { Question } from '../worker/client'
import { SOLVER_NAMES, type TimeLimit } from '../worker/protocol'
import { secondOpinion } from '../worker/second-opinion'
import {
  askAboutBrief,
  BRIEF_SCHEMA,
  ROBUST_FLAG,
  SOLVER_FLAG,
  TIME_FLAG,
  TIME_HELP,
} from './ask-solver'
import type { Command } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'
import type { Solver } from './solver-here'

export const solve: Command = {
  flags: { ...SOLVER_FLAG, ...ROBUST_FLAG, ...TIME_FLAG, ...OILS_FLAG, why: { type: 'boolean' } },
  flagHelp: [
    `--solver ${SOLVER_NAMES.join(' | ')}`,
    '--why      what each limit is worth, and the prices at which oils come in and go out',
    '--robust   the ranges hold for any lot of the oils',
    TIME_HELP,
    OILS_HELP,
  ],
  schema: BRIEF_SCHEMA,
  run: (text, flags, around) => {
    const asked = flags.why === true ? withReasons : plainly
    return askAboutBrief(text, flags, around, { question: asked, quick: true, andThen: confirmed })
  },
}

/** An answer as it is told. */
type Told = Answer & {
  readonly reasons?: Reasons | undefined
  readonly secondSolver?: Confirmation
}

/** An answer of our own solver with what a second one says of it. */
async function confirmed(solver: Solver, brief: Brief, found: Told): Promise<Told> {
  if (!('blend' in found)) return found
  return { ...found, secondSolver: await secondOpinion(solver, brief, found) }
}

function plainly(brief: Brief, limit: TimeLimit): Question<Told> {
  return (service, solver) => service.solve(solver, brief, limit)
}

function withReasons(brief: Brief, limit: TimeLimit): Question<Told> {
  return async (service, solver) => {
    const found = await service.solve(solver, brief, limit)
    if (found.status !== 'optimal') return found
    return { ...found, reasons: await service.reasons(brief, found) }
  }
}
