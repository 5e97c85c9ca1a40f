import type { ParseArgsConfig } from 'node:util'
import { capped } from '../data/capped'
import type { Problem } from '../domain/blend/check-blend'
import type { Surroundings } from './surroundings'

/** Exit codes of the command line. */
export const EXIT = { solved: 0, failed: 1, invalid: 2, infeasible: 3 } as const

/** Statuses that end with another code than 0. */
const EXIT_BY_STATUS: Readonly<Record<string, Result['exitCode']>> = {
  undecided: EXIT.failed,
  invalid: EXIT.invalid,
  infeasible: EXIT.infeasible,
}

/**
 * What a command prints and how it ends; text is printed as it is, anything else as JSON, and nothing
 * where it has printed for itself.
 */
export interface Result {
  readonly exitCode: (typeof EXIT)[keyof typeof EXIT]
  readonly output: unknown
}

/** The flags of one call, by name, as typed. */
export type Flags = Readonly<Record<string, string | boolean | undefined>>

/** What every command tells of itself. */
interface Described {
  /** Its own flags, beside --help and --schema. */
  readonly flags: NonNullable<ParseArgsConfig['options']>
  /** What its flags mean, a line each. */
  readonly flagHelp?: readonly string[]
  /** Puts its arguments in order before they are parsed. */
  readonly arrange?: (args: readonly string[]) => string[]
  /** The JSON Schema of its file; a command without one reads no file. */
  readonly schema?: () => unknown
}

/** A command that is given the text of its file, or nothing. */
export interface TextCommand extends Described {
  run(text: string, flags: Flags, around: Surroundings): Promise<Result>
}

/** A command that is given what was named beside its flags: no file, or one too large to be read at once. */
export interface PathCommand extends Described {
  runOn(paths: readonly string[], flags: Flags, around: Surroundings): Promise<Result>
}

/** One command of the command line. */
export type Command = TextCommand | PathCommand

/** An answer. */
export function solved(output: unknown): Result {
  return { exitCode: EXIT.solved, output }
}

/** An answer to input that can't be used. */
export function invalid(path: string, message: string): Result {
  return allInvalid([{ path, message }])
}

/** An answer to input with several things wrong. */
export function allInvalid(problems: readonly Problem[]): Result {
  return { exitCode: EXIT.invalid, output: { status: 'invalid', problems: capped(problems) } }
}

/** No answer, for a reason that is no fault of the input. */
export function failed(error: unknown): Result {
  const message = error instanceof Error ? error.message : String(error)
  return { exitCode: EXIT.failed, output: { status: 'failed', message } }
}

/** An answer by its status: 0 for one that was found, 1 for none in time, 2 for a faulty brief, 3 for none at all. */
export function byStatus(output: { readonly status: string }): Result {
  const { status } = output
  return { exitCode: EXIT_BY_STATUS[status] ?? EXIT.solved, output }
}
