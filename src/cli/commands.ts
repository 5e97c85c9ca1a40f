import { batchFile, orderOf } from '../data/batch-file'
import { briefFile, briefOf } from '../data/brief-file'
import { lyeCautions } from '../data/cautions'
import { jsonSchemas } from '../data/json-schema'
import { library } from '../data/library'
import { type Parsed, parseJson } from '../data/problems'
import { planBatch } from '../domain/batch/plan'
import type { Answer } from '../domain/optimise/solve'
import { SolverClient } from '../worker/client'
import { SOLVER_NAMES, type SolverName } from '../worker/protocol'
import { startNodeThread } from './node-thread'

/** Exit codes of the command line. */
export const EXIT = { solved: 0, failed: 1, invalid: 2, infeasible: 3 } as const

export interface Flags {
  readonly schema: boolean
  readonly solver: string
  readonly help: boolean
}

/** What a command prints and how it ends. */
export interface Result {
  readonly exitCode: (typeof EXIT)[keyof typeof EXIT]
  readonly output: unknown
}

type ReadInput = (path: string) => Promise<string>

const USAGE = `barwright <command> <file.json | ->

  solve   the best blend for a brief        --solver ${SOLVER_NAMES.join(' | ')}
  batch   the weights of a batch, with its lye
  oils    the oils that a brief can name

  --schema   with solve or batch: the JSON Schema of the file
  --help     this text

Prints JSON. Exit 0 solved, 2 invalid input, 3 no such blend.`

/** Runs one command. */
export async function run(
  positionals: readonly string[],
  flags: Flags,
  readInput: ReadInput,
): Promise<Result> {
  const [command, path, ...more] = positionals
  if (flags.help) return { exitCode: EXIT.solved, output: USAGE }
  if (command === 'oils') return { exitCode: EXIT.solved, output: oils() }
  if (command !== 'solve' && command !== 'batch')
    return invalid(
      '',
      `There is no command "${command ?? ''}". Use solve, batch or oils; --help tells more.`,
    )
  if (flags.schema) return { exitCode: EXIT.solved, output: jsonSchemas[command]() }
  if (path === undefined || more.length > 0)
    return invalid('', `Give ${command} one file, or - to read standard input.`)
  const text = await textFrom(path, readInput)
  if (text.status === 'invalid') return { exitCode: EXIT.invalid, output: text }
  return command === 'solve' ? solve(text.value, flags.solver) : batch(text.value)
}

async function solve(text: string, solver: string): Promise<Result> {
  if (!isSolver(solver))
    return invalid('--solver', `There is no solver "${solver}". Use ${SOLVER_NAMES.join(' or ')}.`)
  const file = parseJson(briefFile, text)
  if (file.status === 'invalid') return { exitCode: EXIT.invalid, output: file }
  const client = new SolverClient(startNodeThread, solver)
  try {
    const brief = briefOf(file.value)
    const answer = await client.ask((service, name) => service.solve(name, brief))
    return { exitCode: exitCodeOf(answer), output: answer }
  } finally {
    client.close()
  }
}

function batch(text: string): Result {
  const file = parseJson(batchFile, text)
  if (file.status === 'invalid') return { exitCode: EXIT.invalid, output: file }
  const plan = planBatch(orderOf(file.value), library)
  if (plan.status === 'invalid') return { exitCode: EXIT.invalid, output: plan }
  return { exitCode: EXIT.solved, output: { ...plan, cautions: lyeCautions } }
}

function oils() {
  return [...library.oils.values()].map(({ id, name, tags, saponificationValue, iodineValue }) => ({
    id,
    name,
    tags,
    saponificationValue,
    iodineValue,
  }))
}

function exitCodeOf({ status }: Answer): Result['exitCode'] {
  if (status === 'optimal') return EXIT.solved
  return status === 'infeasible' ? EXIT.infeasible : EXIT.invalid
}

async function textFrom(path: string, readInput: ReadInput): Promise<Parsed<string>> {
  try {
    return { status: 'parsed', value: await readInput(path) }
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    const message = `The file ${path} can't be read: ${reason}`
    return { status: 'invalid', problems: [{ path: '', message }] }
  }
}

/** An answer to input that can't be used. */
export function invalid(path: string, message: string): Result {
  return { exitCode: EXIT.invalid, output: { status: 'invalid', problems: [{ path, message }] } }
}

function isSolver(name: string): name is SolverName {
  return SOLVER_NAMES.some((one) => one === name)
}
