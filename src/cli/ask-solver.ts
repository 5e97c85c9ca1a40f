import { briefFile, briefOf } from '../data/brief-file'
import { parseJson } from '../data/problems'
import type { Brief } from '../domain/optimise/brief'
import { type Question, SolverClient } from '../worker/client'
import { SOLVER_NAMES, type SolverName } from '../worker/protocol'
import { allInvalid, byStatus, type Flags, invalid, type Result } from './command'
import { startNodeThread } from './node-thread'

/** The flag that picks a solver. */
export const SOLVER_FLAG = { solver: { type: 'string', default: SOLVER_NAMES[0] } } as const

/** The flag that asks the ranges of any lot. */
export const ROBUST_FLAG = { robust: { type: 'boolean' } } as const

/** Reads a brief and answers a question about it in a solving thread. */
export async function askAboutBrief<T extends { readonly status: string }>(
  text: string,
  flags: Flags,
  question: (brief: Brief) => Question<T>,
): Promise<Result> {
  const solver = flags.solver ?? SOLVER_NAMES[0]
  if (!isSolver(solver))
    return invalid('--solver', `There is no solver "${solver}". Use ${SOLVER_NAMES.join(' or ')}.`)
  const file = parseJson(briefFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const stated = briefOf(file.value)
  const brief = flags.robust === true ? { ...stated, robust: true } : stated
  return byStatus(await answer(solver, question(brief)))
}

/** Answers one question in a thread of its own, which is ended afterwards. */
export async function answer<T>(solver: SolverName, question: Question<T>): Promise<T> {
  const client = new SolverClient(startNodeThread, solver)
  try {
    return await client.ask(question)
  } finally {
    client.close()
  }
}

function isSolver(name: unknown): name is SolverName {
  return SOLVER_NAMES.some((one) => one === name)
}
