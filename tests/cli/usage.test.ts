import { readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import oils from '../../data/oils.json'
import { barwright, BATCH, BRIEF } from './run-cli'

describe('what cannot be read ends with 2 and says why', () => {
  test.for<readonly [what: string, args: string[], message: RegExp]>([
    [
      'a file that is not there',
      ['solve', 'nowhere.json'],
      /^The file nowhere\.json can't be read: ENOENT/u,
    ],
    ['a folder', ['batch', tmpdir()], /can't be read: EISDIR/u],
    ['no file', ['solve'], /^Give solve one file, or - to read standard input\./u],
    ['two files', ['batch', BATCH, BATCH], /^Give batch one file/u],
    ['no command', [], /^There is no command ""\. Use one of solve, /u],
    ['an unknown command', ['mix', BATCH], /^There is no command "mix"\. Use one of solve, /u],
    ['an unknown flag', ['solve', BRIEF, '--fast'], /^Unknown option '--fast'/u],
    ['a flag without its value', ['solve', BRIEF, '--solver'], /--solver/u],
  ])('%s', async ([, args, message]) => {
    const { exitCode, output, errors } = await barwright(args)
    expect(errors).toBe('')
    expect(exitCode).toBe(2)
    const answer = JSON.parse(output) as { problems: { message: string }[] }
    expect(answer).toMatchObject({ status: 'invalid' })
    expect(answer.problems.map((problem) => problem.message)).toEqual([
      expect.stringMatching(message) as string,
    ])
  })

  test.for([
    ['broken JSON', '{"format": "barwright-brief/1",'],
    ['nothing', ''],
    ['a text', 'olive 70, coconut 30'],
  ])('%s', async ([, input]) => {
    const { exitCode, output } = await barwright(['solve', '-'], input)
    expect(exitCode).toBe(2)
    expect(output).toContain('Not a JSON file: ')
  })
})

test('--help tells the commands, their files and the exit codes', async () => {
  const { exitCode, output } = await barwright(['--help'])
  expect(exitCode).toBe(0)
  for (const word of ['solve', 'batch', 'oils', '--schema', 'Exit 0 solved, 1 failed', '2 invalid'])
    expect(output).toContain(word)
})

test('--help after a command tells its flags', async () => {
  const { exitCode, output } = await barwright(['solve', '--help'])
  expect(exitCode).toBe(0)
  for (const solver of ['--solver', 'barwright', 'javascript-lp-solver', 'highs'])
    expect(output).toContain(solver)
})

test('a command that reads no file says so of one', async () => {
  const { exitCode, output } = await barwright(['oils', BRIEF])
  expect(exitCode).toBe(2)
  expect(output).toContain('oils reads no file')
})

test('oils lists every oil that a brief can name, with its name', async () => {
  const { exitCode, output } = await barwright(['oils'])
  expect(exitCode).toBe(0)
  const listed = JSON.parse(output) as { id: string; name: string }[]
  expect(listed.map(({ id, name }) => [id, name])).toEqual(oils.map(({ id, name }) => [id, name]))
})

describe('--schema', () => {
  const cases = [
    ['solve', BRIEF, { measures: { hardness: { min: '34' } } }],
    ['batch', BATCH, { water: { lyeConcentration: 33, ratio: 2 } }],
  ] as const

  test.for(cases)(
    'of %s accepts the example file and no other shape',
    async ([command, file, wrong]) => {
      const { exitCode, output } = await barwright([command, '--schema'])
      expect(exitCode).toBe(0)
      const schema = z.fromJSONSchema(JSON.parse(output) as Parameters<typeof z.fromJSONSchema>[0])
      const example = JSON.parse(readFileSync(file, 'utf8')) as object
      expect(schema.safeParse(example).error).toBeUndefined()
      expect(schema.safeParse({ ...example, ...wrong }).success).toBe(false)
      expect(schema.safeParse({ ...example, extra: 1 }).success).toBe(false)
      expect(schema.safeParse({ ...example, format: 'other/1' }).success).toBe(false)
    },
  )

  test.for(cases)(
    'of %s names its draft, explains its keys and lets defaults be left out',
    async ([command]) => {
      const { output } = await barwright([command, '--schema'])
      const schema = JSON.parse(output) as {
        $schema: string
        required: string[]
        properties: Record<string, { description?: string }>
      }
      expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
      expect(schema.required).not.toContain('groups')
      expect(schema.required).not.toContain('purity')
      expect(schema.required).toContain('format')
      const explained = Object.entries(schema.properties).filter(([key]) => key !== 'format')
      for (const [key, { description }] of explained) expect(description, key).toMatch(/\w/u)
    },
  )
})
