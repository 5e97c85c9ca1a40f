#!/usr/bin/env node
import { readFile } from 'node:fs/promises'
import { text as textOf } from 'node:stream/consumers'
import { parseArgs } from 'node:util'
import { invalid, run, type Result } from './commands'

const readInput = (path: string) => (path === '-' ? textOf(process.stdin) : readFile(path, 'utf8'))

const { exitCode, output } = await resultOf(process.argv.slice(2))
process.stdout.write(`${typeof output === 'string' ? output : JSON.stringify(output, null, 2)}\n`)
process.exitCode = exitCode

async function resultOf(args: string[]): Promise<Result> {
  const parsed = flagsOf(args)
  if (parsed instanceof Error) return invalid('', `${parsed.message} --help tells what there is.`)
  return run(parsed.positionals, parsed.values, readInput)
}

/** The flags, or what is wrong with them. */
function flagsOf(args: string[]) {
  try {
    return parseArgs({
      args,
      allowPositionals: true,
      options: {
        schema: { type: 'boolean', default: false },
        solver: { type: 'string', default: 'barwright' },
        help: { type: 'boolean', short: 'h', default: false },
      },
    })
  } catch (error) {
    if (error instanceof TypeError) return error
    throw error
  }
}
