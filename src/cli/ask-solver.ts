import { briefFile, briefOf } from '../data/brief-file'
import { fileSchema } from '../data/ledger-schemas'
import { parseJson } from '../data/problems'
import type { Library } from '../data/library'
import type { Brief } from '../domain/optimise/brief/brief'
import { DEFAULT_TIME_MS } from '../domain/optimise/search/allowance'
import { MS_PER_SECOND } from '../domain/units'
import type { Question } from '../worker/client'
import { SOLVER_NAMES, type SolverName, type TimeLimit } from '../worker/protocol'
import { allInvalid, byStatus, type Flags, invalid, type Result } from './command'
import { withFlags } from './flagged'
import { LazyThread } from './lazy-thread'
import { libraryFor } from './own-oils'
import type { Surroundings } from './surroundings'
import type { Solver } from './solver-here'
import { type Read, readNumber } from './number-flag'

/** The JSON Schema of a brief. */
export const BRIEF_SCHEMA = () => fileSchema(briefFile)

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

/** A question about a brief, and how it is asked. */
interface Asked<T> {
  readonly question: (brief: Brief, limit: TimeLimit) => Question<T>
  /** Whether the answer takes no longer than the start of a thread: it is found without one. */
  readonly quick?: boolean
  /** What is done with an answer of our own solver. */
  readonly andThen?: (solver: Solver, brief: Brief, found: T) => Promise<T>
}

/** Reads a brief and answers a question about it, within the time limit flagged. */
export async function askAboutBrief<T extends { readonly status: string }>(
  text: string,
  flags: Flags,
  around: Surroundings,
  { question, quick = false, andThen }: Asked<T>,
): Promise<Result> {
  const time = readTimeLimit(flags['time-limit'])
  if ('problem' in time) return allInvalid([time.problem])
  const name = flags.solver ?? SOLVER_NAMES[0]
  if (!isSolver(name))
    return invalid('--solver', `There is no solver "${name}". Use ${SOLVER_NAMES.join(' or ')}.`)
  const file = parseJson(briefFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const library = await libraryFor(file.value.ownOils, flags, around)
  if (library.status === 'invalid') return allInvalid(library.problems)
  const stated = briefOf(file.value)
  const brief = flags.robust === true ? { ...stated, robust: true } : stated
  const { timeMs = DEFAULT_TIME_MS } = time.value
  const limitMs = MOST_SEARCHES * timeMs + BESIDE_MS
  return withSolver(library.value, quick && name === 'barwright', async (solver) => {
    const found = await solver.ask(question(brief, time.value), { limitMs, solver: name })
    const told = andThen && name === 'barwright' ? await andThen(solver, brief, found) : found
    return byStatus(withFlags(told, library.value))
  })
}

/** Lends a solver: one of this process, with threads behind it where they are needed, or a thread's. */
async function withSolver<T>(
  library: Library,
  here: boolean,
  use: (solver: Solver) => Promise<T>,
): Promise<T> {
  const thread = new LazyThread(library)
  try {
    if (!here) return await use(thread)
    const { solverHere } = await import('./solver-here')
    return await use(solverHere(library, thread))
  } finally {
    thread.close()
  }
}

function readTimeLimit(typed: unknown): Read<TimeLimit> {
  if (typed === undefined) return { value: {} }
  const seconds = readNumber(typed, '--time-limit', TIME_LIMITS)
  return 'problem' in seconds ? seconds : { value: { timeMs: seconds.value * MS_PER_SECOND } }
}

function isSolver(name: unknown): name is SolverName {
  return SOLVER_NAMES.some((one) => one === name)
}
