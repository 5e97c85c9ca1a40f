import { type Command, invalid, type PathCommand, type Result, solved } from './command'
import { COMMANDS } from './commands'

/** What a shell is to offer: the flags of each command, with their dashes. */
type Offers = ReadonlyMap<string, readonly string[]>

const SHELLS = { bash: bashScript, zsh: zshScript, fish: fishScript } as const

const NAMES = Object.keys(SHELLS)

export const completion: PathCommand = {
  flags: {},
  flagHelp: [
    'bash   source <(barwright completion bash)',
    'zsh    source <(barwright completion zsh)',
    'fish   barwright completion fish | source',
  ],
  runOn: async ([shell, ...more]): Promise<Result> => {
    if (!isShell(shell) || more.length > 0)
      return invalid('', `Name one shell: ${NAMES.join(', ')}.`)
    return solved(SHELLS[shell](await offers()))
  },
}

function isShell(name: string | undefined): name is keyof typeof SHELLS {
  return name !== undefined && Object.hasOwn(SHELLS, name)
}

async function offers(): Promise<Offers> {
  const found = new Map<string, readonly string[]>()
  for (const [name, entry] of COMMANDS) found.set(name, flagsOf(await entry.load()))
  return found.set('help', [...COMMANDS.keys()])
}

function flagsOf({ flags, schema }: Command): string[] {
  const names = [...Object.keys(flags), ...(schema ? ['schema'] : []), 'help']
  return names.map((name) => `--${name}`)
}

function bashScript(offered: Offers): string {
  const cases = [...offered].map(([name, words]) => `    ${name}) words="${words.join(' ')}" ;;`)
  return [
    '_barwright() {',
    '  local word="${COMP_WORDS[COMP_CWORD]}" words=""',
    '  if [ "$COMP_CWORD" -eq 1 ]; then',
    `    words="${[...offered.keys(), '--help', '--version'].join(' ')}"`,
    '  else case "${COMP_WORDS[1]}" in',
    ...cases,
    '  esac; fi',
    '  COMPREPLY=($(compgen -W "$words" -- "$word"))',
    '}',
    'complete -o default -F _barwright barwright',
  ].join('\n')
}

/** zsh knows the ways of bash. */
function zshScript(offered: Offers): string {
  return ['autoload -U +X bashcompinit && bashcompinit', bashScript(offered)].join('\n')
}

function fishScript(offered: Offers): string {
  const says = (name: string) => COMMANDS.get(name)?.says ?? 'what a command does'
  const lines = [...offered].flatMap(([name, words]) => [
    `complete -c barwright -n __fish_use_subcommand -a ${name} -d '${says(name)}'`,
    ...words.map((word) => {
      const what = word.startsWith('--') ? `-l ${word.slice(2)}` : `-a ${word}`
      return `complete -c barwright -n '__fish_seen_subcommand_from ${name}' ${what}`
    }),
  ])
  return lines.join('\n')
}
