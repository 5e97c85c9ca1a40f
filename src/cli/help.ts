import type { Command } from './command'
import { COMMANDS, type Entry } from './commands'

/** What there is, in short. */
export function help(): string {
  const width = Math.max(...[...COMMANDS.keys()].map((name) => name.length)) + 3
  const lines = [...COMMANDS].map(([name, { says }]) => `  ${name.padEnd(width)}${says}`)
  return [
    'barwright <command> <file.json | ->',
    '',
    ...lines,
    '',
    '  help <command>   its flags, with examples; --help after a command is the same',
    '  --schema         after a command: the JSON Schema of its file',
    '  --version        the version',
    '',
    'Prints JSON. Exit 0 solved, 1 failed or not decided in time, 2 invalid input, 3 no such blend.',
  ].join('\n')
}

/** All about one command. */
export function helpOn(
  name: string,
  { says, examples }: Entry,
  { flagHelp = [], schema }: Command,
): string {
  const file = schema ? ' <file.json | ->' : ''
  return [
    `barwright ${name}${file}`,
    '',
    `  ${says}`,
    ...flagHelp.map((line) => `  ${line}`),
    '',
    'Such as:',
    ...examples.map((example) => `  barwright ${example}`),
  ].join('\n')
}
