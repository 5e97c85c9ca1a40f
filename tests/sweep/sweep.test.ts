import { appendFile, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { library } from '../../src/data/library'
import { barwright, BRIEF } from '../cli/run-cli'
import { answersIn, EXAMPLE, scenarios, sweepFolder, writeLines } from './sweeping'

interface Summary {
  readonly status: string
  readonly lines: number
  readonly answeredBefore: number
  readonly answeredNow: Readonly<Record<string, number>>
}

async function sweep(input: string, out: string, ...flags: string[]): Promise<Summary> {
  const { exitCode, output, errors } = await barwright([
    'sweep',
    input,
    '--out',
    out,
    '--quiet',
    ...flags,
  ])
  expect(errors).toBe('')
  expect(exitCode).toBe(0)
  return JSON.parse(output) as Summary
}

test('sweep answers every line of the example in its order, by line and key', async () => {
  const out = join(await sweepFolder(), 'out.ndjson')
  const { lines, answeredNow } = await sweep(EXAMPLE, out)
  expect(lines).toBe(6)
  expect(answeredNow).toMatchObject({ solved: 4, infeasible: 1, invalid: 1, failed: 0 })
  const answers = await answersIn(out)
  expect(answers.map(({ line }) => line)).toEqual([1, 2, 3, 4, 5, 6])
  expect(answers.map(({ key }) => key)).toEqual([
    'as it stands',
    'olive dearer',
    'olive far dearer',
    17,
    undefined,
    'no such oil',
  ])
  // A brief asks for at most 7.50 per kg, and has at least 20 % olive: at 14.40 that alone is 2.88.
  expect(answers.map(({ status }) => status)).toEqual([
    'solved',
    'solved',
    'infeasible',
    'solved',
    'solved',
    'invalid',
  ])
  expect(answers[5]).toMatchObject({
    problems: [
      { path: 'prices.dragon', message: expect.stringContaining('no oil "dragon"') as string },
    ],
  })
})

test('sweep answers a brief as the command solve does, to one part in a million', async () => {
  const out = join(await sweepFolder(), 'out.ndjson')
  await sweep(EXAMPLE, out)
  const alone = JSON.parse((await barwright(['solve', BRIEF])).output) as { goalValue: number }
  const [first] = await answersIn(out)
  expect(first?.['goalValue']).toBeCloseTo(alone.goalValue, 6)
})

test('a line that makes no sense is told so and stops nothing', async () => {
  const folder = await sweepFolder()
  const [input, out] = [join(folder, 'in.ndjson'), join(folder, 'out.ndjson')]
  const long = JSON.stringify({ brief: 'brief.json', key: 'x'.repeat(300_000) })
  await writeLines(input, [
    '',
    'nonsense',
    { brief: 'nowhere.json' },
    { brief: 'brief.json', price: { olive: 1 } },
    { brief: 'brief.json', prices: { olive: '1' } },
    { brief: 'brief.json', prices: { olive: -1 } },
    { brief: { format: 'barwright-brief/1', oils: {}, goal: { minimise: 'cost' } } },
    long,
    { brief: 7 },
    ' {"brief":"brief.json"}\r',
  ])
  await sweep(input, out)
  const answers = await answersIn(out)
  expect(answers.map(({ status }) => status)).toEqual([
    ...Array<string>(9).fill('invalid'),
    'solved',
  ])
  const messages = answers.slice(0, -1).map(({ problems }) => {
    const [{ path, message }] = problems as [{ path: string; message: string }]
    return `${path}: ${message}`
  })
  expect(messages).toEqual([
    ': The line is empty. Give a brief, or a brief and prices.',
    expect.stringMatching(/^: Not a JSON file: /u),
    "brief: The brief nowhere.json can't be read: ENOENT. Paths start at the folder of the sweep's file.",
    ': Unknown key price. Take it out or correct its spelling.',
    'prices.olive: "1" stands here. Give a value of type number.',
    'brief.oils.olive.pricePerKg: The price is -1. Give 0 to 1000000000 per kg.',
    'brief.oils: The shelf is empty. Add at least one oil.',
    ': The line is longer than 262144 bytes. Put its brief into a file.',
    'brief: 7 stands here. Give a value of type string.',
  ])
})

test('a last line without an end is answered too', async () => {
  const folder = await sweepFolder()
  const [input, out] = [join(folder, 'in.ndjson'), join(folder, 'out.ndjson')]
  await writeFile(input, '{"brief":"brief.json"}\n{"brief":"brief.json"}')
  expect(await sweep(input, out)).toMatchObject({ lines: 2 })
  expect(await answersIn(out)).toHaveLength(2)
  expect(await sweep(input, out)).toMatchObject({ lines: 2, answeredBefore: 2 })
})

test('an empty file has no answers', async () => {
  const folder = await sweepFolder()
  await writeFile(join(folder, 'in.ndjson'), '')
  await sweep(join(folder, 'in.ndjson'), join(folder, 'out.ndjson'))
  expect(await readFile(join(folder, 'out.ndjson'), 'utf8')).toBe('')
})

test('the answers are the same bytes on one, two and five threads, also where many blends are equally good', async () => {
  const folder = await sweepFolder()
  const input = join(folder, 'in.ndjson')
  const oils = [...library.oils.keys()].slice(0, 24)
  const tied = {
    format: 'barwright-brief/1',
    oils: Object.fromEntries(oils.map((oil) => [oil, { max: 40 }])),
    measures: { hardness: { min: 30 }, lather: { min: 20 } },
    goal: { minimise: 'cost' },
  }
  // Whole-number prices of three kinds only: nearly every optimum is a tie of many blends.
  const lines = Array.from({ length: 900 }, (_, number) => ({
    brief: tied,
    prices: Object.fromEntries(oils.map((oil, place) => [oil, 4 + ((place * (number + 3)) % 3)])),
  }))
  await writeLines(input, lines)
  const outs = ['1', '2', '5'].map((threads) => join(folder, `out-${threads}.ndjson`))
  for (const [index, threads] of ['1', '2', '5'].entries())
    await sweep(input, outs[index] ?? '', '--threads', threads)
  const [one, two, five] = await Promise.all(outs.map((out) => readFile(out, 'utf8')))
  expect(two).toBe(one)
  expect(five).toBe(one)
  // And line by line as if each were alone: a brief of its own has no solver before it.
  await writeLines(input, [lines[450]])
  await sweep(input, join(folder, 'alone.ndjson'))
  const [alone] = await answersIn(join(folder, 'alone.ndjson'))
  const [answer] = (await answersIn(outs[0] ?? '')).slice(450)
  expect({ ...alone, line: 451 }).toEqual(answer)
})

test('sweep refuses an input that has changed, and a file it has not begun, and says what to do', async () => {
  const folder = await sweepFolder()
  const [input, out] = [join(folder, 'in.ndjson'), join(folder, 'out.ndjson')]
  await writeLines(input, scenarios(5))
  await sweep(input, out)
  await appendFile(input, '{"brief":"brief.json"}\n')
  const changed = await barwright(['sweep', input, '--out', out])
  expect(changed.exitCode).toBe(2)
  expect(changed.output).toContain('in.ndjson has changed since. Give another --out, or --restart')
  const foreign = join(folder, 'notes.txt')
  await writeFile(foreign, 'notes')
  const refused = await barwright(['sweep', input, '--out', foreign])
  expect(refused.exitCode).toBe(2)
  expect(refused.output).toContain('notes.txt that no sweep has begun')
  expect(await readFile(foreign, 'utf8')).toBe('notes')
  expect(await sweep(input, out, '--restart')).toMatchObject({ lines: 6, answeredBefore: 0 })
})

test('sweep refuses what it cannot do with a message', async () => {
  const out = join(await sweepFolder(), 'out.ndjson')
  const cases: [string[], RegExp][] = [
    [['sweep', EXAMPLE], /Say where the answers go: --out/u],
    [['sweep', '-', '--out', out], /standard input could not be read again/u],
    [['sweep', 'nowhere.ndjson', '--out', out], /nowhere\.ndjson can't be used: ENOENT/u],
    [['sweep', EXAMPLE, '--out', out, '--threads', 'all'], /\\"all\\" is no number of threads/u],
    [['sweep', EXAMPLE, '--out', out, '--queue', 'http://host'], /none of a Redis or Valkey/u],
    [
      ['sweep', EXAMPLE, '--out', out, '--queue', 'redis://:secret@127.0.0.1:1'],
      /No Redis or Valkey answers at 127\.0\.0\.1:1 \(/u,
    ],
    [['sweep', EXAMPLE, '--work', 'redis://127.0.0.1:1'], /A worker reads no file/u],
    [['sweep', '--work', 'redis://127.0.0.1:1'], /No Redis or Valkey answers/u],
  ]
  for (const [args, message] of cases) {
    const { exitCode, output, errors } = await barwright(args)
    expect(output).toMatch(message)
    expect(output + errors).not.toContain('secret')
    expect(exitCode).toBe(2)
  }
})

test('--schema of sweep accepts every line of the example but the shape of no other file', async () => {
  const { output } = await barwright(['sweep', '--schema'])
  const schema = z.fromJSONSchema(JSON.parse(output) as Parameters<typeof z.fromJSONSchema>[0])
  const lines = (await readFile(EXAMPLE, 'utf8')).trim().split('\n')
  for (const line of lines) expect(schema.safeParse(JSON.parse(line)).error).toBeUndefined()
  expect(schema.safeParse({ brief: 'brief.json', extra: 1 }).success).toBe(false)
  expect(schema.safeParse({ brief: 'brief.json', format: 'other/1' }).success).toBe(false)
})
