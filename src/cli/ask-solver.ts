import { briefFile, briefOf } from '../data/brief-file'
import { parseJson } from '../data/problems'
import type { Brief } from '../domain/optimise/brief/brief'
import { DEFAULT_TIME_MS } from '../domain/optimise/search/allowance'
import { MS_PER_SECOND } from '../domain/units'
import { type Question, SolverClient } from '../worker/client'
import { SOLVER_NAMES, type SolverName, type TimeLimit } from '../worker/protocol'
import { type Read, readNumber } from './axes'
import { allInvalid, byStatus, type Flags, invalid, type Result } from './command'
import { startNodeThread } from './node-thread'

/** The flag that picks a solver. */
export const SOLVER_FLAG = { solver: { type: 'string', default: SOLVER_NAMES[0] } } as const

/** The flag that asks the ranges of any lot. */
export const ROBUST_FLAG = { robust: { type: 'boolean' } } as const

/** The flag that bounds a search under rules. */
export const TIME_FLAG = { 'time-limit': { type: 'string' } } as const
export const TIME_HELP = `--time-limit s   seconds for a search under rules (${DEFAULT_TIME_MS / MS_PER_SECOND})`

const TIME_LIMITS = { least: 0.001, most: 86_400, whole: false }

/** Time beside the search, for starting the thread and saying why there is no blend. */
const BESIDE_MS = 30_000
/** Searches that one question may make with a limit each: for the blend, for both ways to hold lots. */
const MOST_SEARCHES = 3

/** Reads a brief and answers a question about it in a solving thread, within the time limit flagged. */
export async function askAboutBrief<T extends { readonly status: string }>(
  text: string,
  flags: Flags,
  question: (brief: Brief, limit: TimeLimit) => Question<T>,
): Promise<Result> {
  const time = readTimeLimit(flags['time-limit'])
  if ('problem' in time) return allInvalid([time.problem])
  const solver = flags.solver ?? SOLVER_NAMES[0]
  if (!isSolver(solver))
    return invalid('--solver', `There is no solver "${solver}". Use ${SOLVER_NAMES.join(' or ')}.`)
  const file = parseJson(briefFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const stated = briefOf(file.value)
  const brief = flags.robust === true ? { ...stated, robust: true } : stated
  const { timeMs = DEFAULT_TIME_MS } = time.value
  const limitMs = MOST_SEARCHES * timeMs + BESIDE_MS
  return byStatus(await answer(solver, question(brief, time.value), limitMs))
}

function readTimeLimit(typed: unknown): Read<TimeLimit> {
  if (typed === undefined) return { value: {} }
  const seconds = readNumber(typed, '--time-limit', TIME_LIMITS)
  return 'problem' in seconds ? seconds : { value: { timeMs: seconds.value * MS_PER_SECOND } }
}

/** Answers one question in a thread of its own, which is ended afterwards. */
export async function answer<T>(
  solver: SolverName,
  question: Question<T>,
  limitMs?: number,
): Promise<T> {
  const client = new SolverClient(startNodeThread, solver)
  try {
    return await client.ask(question, { limitMs })
  } finally {
    client.close()
  }
}

function isSolver(name: unknown): name is SolverName {
  return SOLVER_NAMES.some((one) => one === name)
}
