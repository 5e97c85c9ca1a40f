import { parseArgs } from 'node:util'
import { version } from '../../package.json'
import { type Command, invalid, type Result, solved } from './command'
import { COMMANDS, type Entry } from './commands'
import { help, helpOn } from './help'
import { readText } from './read-text'
import type { Surroundings } from './surroundings'

/** Runs one call of the command line. */
export async function run(args: readonly string[], around: Surroundings): Promise<Result> {
  const [name = '', ...rest] = args
  if (name === '--help' || name === '-h' || (name === 'help' && rest.length === 0))
    return solved(help())
  if (name === '--version' || name === '-V') return solved(version)
  if (name === 'help') return rest.length === 1 ? helpFor(rest[0] ?? '') : ONE_COMMAND
  const entry = COMMANDS.get(name)
  return entry ? call(name, entry, rest, around) : unknown(name)
}

async function call(
  name: string,
  entry: Entry,
  args: readonly string[],
  around: Surroundings,
): Promise<Result> {
  const command = await entry.load()
  const parsed = parse(command, command.arrange?.(args) ?? [...args])
  if (parsed instanceof Error)
    return invalid('', `${parsed.message}. ${name} --help tells what there is.`)
  const { values, positionals } = parsed
  if (values.help === true) return solved(helpOn(name, entry, command))
  if (values.schema === true) return schemaOf(name, command)
  if ('runOn' in command) return command.runOn(positionals, values, around)
  if (!command.schema)
    return positionals.length > 0
      ? invalid('', `${name} reads no file; take ${positionals.join(' ')} out.`)
      : command.run('', values, around)
  const [path, ...more] = positionals
  if (path === undefined || more.length > 0)
    return invalid('', `Give ${name} one file, or - to read standard input.`)
  const read = await readText(path, around)
  return 'text' in read ? command.run(read.text, values, around) : invalid('', read.message)
}

async function helpFor(name: string): Promise<Result> {
  const entry = COMMANDS.get(name)
  return entry ? solved(helpOn(name, entry, await entry.load())) : unknown(name)
}

const ONE_COMMAND = invalid('', 'help tells of one command at a time, as in: help solve.')

function unknown(name: string): Result {
  const names = [...COMMANDS.keys()].join(', ')
  return invalid('', `There is no command "${name}". Use one of ${names}; --help tells more.`)
}

/** The flags and the rest, or what is wrong with them. */
function parse(command: Command, args: string[]) {
  try {
    return parseArgs({
      args,
      allowPositionals: true,
      options: {
        ...command.flags,
        schema: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    })
  } catch (error) {
    if (error instanceof TypeError) return error
    throw error
  }
}

function schemaOf(name: string, { schema }: Command): Result {
  return schema ? solved(schema()) : invalid('--schema', `${name} reads no file.`)
}
