import { parseArgs } from 'node:util'
import { alternatives } from './alternatives'
import { at } from './at'
import { batch } from './batch'
import { buy } from './buy'
import { type Command, invalid, type Result, solved } from './command'
import { cost } from './cost'
import { frontier } from './frontier'
import { gone } from './gone'
import { label } from './label'
import { oils } from './oils'
import { prices } from './prices'
import { quote } from './quote'
import { range } from './range'
import { reprice } from './reprice'
import { solve } from './solve'
import { spread } from './spread'
import { sweep } from './sweep'
import { terrain } from './terrain'

const COMMANDS: Readonly<Record<string, Command>> = {
  solve,
  range,
  frontier,
  terrain,
  at,
  alternatives,
  spread,
  batch,
  label,
  sweep,
  oils,
  prices,
  buy,
  cost,
  quote,
  reprice,
  gone,
}

type ReadInput = (path: string) => Promise<string>

/** Runs one call of the command line. */
export async function run(args: readonly string[], readInput: ReadInput): Promise<Result> {
  const [name = '', ...rest] = args
  if (name === '--help' || name === '-h') return solved(help())
  const command = COMMANDS[name]
  if (!command) {
    const names = Object.keys(COMMANDS).join(', ')
    return invalid('', `There is no command "${name}". Use one of ${names}; --help tells more.`)
  }
  const parsed = parse(command, command.arrange?.(rest) ?? rest)
  if (parsed instanceof Error)
    return invalid('', `${parsed.message}. ${name} --help tells what there is.`)
  const { values, positionals } = parsed
  if (values.help === true) return solved(helpOn(name, command))
  if (values.schema === true) return schemaOf(name, command)
  if ('runOn' in command) return command.runOn(positionals, values)
  if (!command.schema)
    return positionals.length > 0
      ? invalid('', `${name} reads no file; take ${positionals.join(' ')} out.`)
      : command.run('', values)
  const [path, ...more] = positionals
  if (path === undefined || more.length > 0)
    return invalid('', `Give ${name} one file, or - to read standard input.`)
  const text = await read(path, readInput)
  return text instanceof Error
    ? invalid('', `The file ${path} can't be read: ${text.message}`)
    : command.run(text, values)
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

async function read(path: string, readInput: ReadInput): Promise<string | Error> {
  try {
    return await readInput(path)
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error))
  }
}

function schemaOf(name: string, { schema }: Command): Result {
  return schema ? solved(schema()) : invalid('--schema', `${name} reads no file.`)
}

function help(): string {
  const width = Math.max(...Object.keys(COMMANDS).map((name) => name.length)) + 3
  const lines = Object.entries(COMMANDS).map(([name, { says }]) => `  ${name.padEnd(width)}${says}`)
  return [
    'barwright <command> <file.json | ->',
    '',
    ...lines,
    '',
    '  --schema   the JSON Schema of the command’s file',
    '  --help     after a command: its flags',
    '',
    'Prints JSON. Exit 0 solved, 1 failed or not decided in time, 2 invalid input, 3 no such blend.',
  ].join('\n')
}

function helpOn(name: string, { says, flagHelp = [], schema }: Command): string {
  const file = schema ? ' <file.json | ->' : ''
  return [`barwright ${name}${file}`, '', `  ${says}`, ...flagHelp.map((line) => `  ${line}`)].join(
    '\n',
  )
}
