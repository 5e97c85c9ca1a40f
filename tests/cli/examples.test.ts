import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { Readable } from 'node:stream'
import { readFile } from 'node:fs/promises'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { COMMANDS } from '../../src/cli/commands'
import { version } from '../../package.json'
import { barwright, BRIEF, builtMain, Caught, SURROUNDINGS } from './run-cli'

const EXAMPLES = [...COMMANDS].flatMap(([name, { examples }]) =>
  examples.map((example) => [name, example] as const),
)

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'barwright-examples-'))
  await cp(dirname(BRIEF), folder, { recursive: true })
})
afterAll(() => rm(folder, { recursive: true, force: true }))

/** Words that name a file of the example, there or to be written, by their absolute path. */
function placed(word: string): string {
  return /\.(?:json|csv|ndjson)$/u.test(word) ? join(folder, word) : word
}

describe('help shows examples that work', () => {
  test.each(EXAMPLES)('%s: %s', async (name, example) => {
    const [call = '', from] = example.split(' < ')
    const [stdout, stderr] = [new Caught(), new Caught()]
    const main = await builtMain()
    const exitCode = await main(call.split(' ').map(placed), {
      ...SURROUNDINGS,
      stdin: Readable.from(from === undefined ? [] : [await readFile(placed(from))]),
      stdout,
      stderr,
    })
    expect(stdout.text).not.toContain('"invalid",\n  "problems"')
    expect(exitCode).toBe(0)
    expect(stderr.text).toBe('')
    const { output } = await barwright(['help', name])
    expect(output).toContain(`barwright ${example}`)
    expect((await barwright([name, '--help'])).output).toBe(output)
  })
})

test('--version tells the version', async () => {
  expect(await barwright(['--version'])).toEqual({
    exitCode: 0,
    output: `${version}\n`,
    errors: '',
  })
})

test.each(['constructor', '__proto__', 'toString', 'hasOwnProperty'])(
  'a command that is named as %s is unknown',
  async (name) => {
    for (const args of [[name], ['help', name]]) {
      const { exitCode, output } = await barwright(args)
      expect(exitCode).toBe(2)
      expect(output).toContain('There is no command')
    }
  },
)
