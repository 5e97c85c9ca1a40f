import { link, mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises'
import { hostname } from 'node:os'
import { basename, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { barwright } from '../cli/run-cli'
import { scenarios, start, sweepFolder, writeLines } from './sweeping'

async function files(count = 5) {
  const folder = await sweepFolder()
  const input = join(folder, 'in.ndjson')
  await writeLines(input, scenarios(count))
  return { folder, input, out: join(folder, 'out.ndjson'), brief: join(folder, 'brief.json') }
}

async function refusal(...args: string[]): Promise<string> {
  const { exitCode, output, errors } = await barwright(['sweep', '--quiet', ...args])
  expect(errors).toBe('')
  expect(exitCode).toBe(2)
  const [problem] = (JSON.parse(output) as { problems: { message: string }[] }).problems
  return problem?.message ?? ''
}

async function done(...args: string[]): Promise<unknown> {
  const { exitCode, output, errors } = await barwright(['sweep', '--quiet', ...args])
  expect(errors).toBe('')
  expect(exitCode).toBe(0)
  return JSON.parse(output)
}

describe('a sweep never writes what it reads', () => {
  test.for([
    'its input',
    'a hard link to it',
    'a symbolic link to it',
    'a brief it names',
    'a link to that',
  ])('such as %s, also with --restart', async (what) => {
    const { folder, input, brief } = await files()
    const alias = join(folder, 'alias')
    const before = [await readFile(input), await readFile(brief)]
    const paths: Record<string, () => Promise<string>> = {
      'its input': () => Promise.resolve(input),
      'a hard link to it': () => link(input, alias).then(() => alias),
      'a symbolic link to it': () => symlink(input, alias).then(() => alias),
      'a brief it names': () => Promise.resolve(brief),
      'a link to that': () => link(brief, alias).then(() => alias),
    }
    const out = (await paths[what]?.()) ?? ''
    for (const flags of [[], ['--restart']])
      expect(await refusal(input, '--out', out, ...flags)).toMatch(
        /would be written and is what the sweep reads: .*Give another --out\.$/u,
      )
    expect([await readFile(input), await readFile(brief)]).toEqual(before)
  })

  test('nor what lies beside its output', async () => {
    const { folder, out } = await files()
    const input = `${out}.part`
    await writeLines(input, scenarios(2))
    const before = await readdir(folder)
    expect(await refusal(input, '--out', out, '--restart')).toContain('is what the sweep reads')
    expect(await readdir(folder)).toEqual(before)
  })
})

test.for(['/dev/null', '/dev/full'])('--out %s is refused as no regular file', async (device) => {
  const { input } = await files()
  expect(await refusal(input, '--out', device, '--restart')).toContain('no regular file')
})

test('--out a folder is refused, and so is one in a folder that is not there', async () => {
  const { folder, input } = await files()
  const inside = join(folder, 'inside')
  await mkdir(inside)
  expect(await refusal(input, '--out', inside)).toContain('no regular file but a folder')
  expect(await refusal(input, '--out', join(folder, 'none', 'out'))).toContain(
    "can't be written: ENOENT",
  )
  expect(await refusal(inside, '--out', join(folder, 'out'))).toContain('no regular file')
})

test('--restart writes over a sweep’s own output only, and only when all is answered', async () => {
  const { folder, input, out } = await files()
  await writeFile(out, 'my notes\n')
  expect(await refusal(input, '--out', out, '--restart')).toContain('that no sweep has begun')
  const own = join(folder, 'own.ndjson')
  await done(input, '--out', own)
  await writeFile(own, 'my notes\n')
  expect(await refusal(input, '--out', own, '--restart')).toContain('lines that no sweep wrote')
  expect(await readFile(own, 'utf8')).toBe('my notes\n')
})

test('an output through a link replaces what the link leads to', async () => {
  const { folder, input } = await files()
  const [real, alias] = [join(folder, 'real.ndjson'), join(folder, 'alias.ndjson')]
  await done(input, '--out', real)
  const before = await readFile(real)
  await symlink(real, alias)
  expect(await done(input, '--out', alias, '--restart')).toMatchObject({ lines: 5 })
  expect(await readFile(real)).toEqual(before)
})

test('what was done is not done again, and leaves nothing beside it but what it is of', async () => {
  const { folder, input, out } = await files()
  await done(input, '--out', out)
  expect((await readdir(folder)).sort()).toEqual([
    'brief.json',
    'in.ndjson',
    'out.ndjson',
    'out.ndjson.sweep.json',
  ])
  const before = await readFile(out)
  expect(await done(input, '--out', out)).toMatchObject({ answeredBefore: 5, lines: 5 })
  expect(await readFile(out)).toEqual(before)
})

test('a brief that is named by its path and has changed is noticed', async () => {
  const { input, out, brief } = await files()
  await done(input, '--out', out)
  await writeFile(brief, (await readFile(brief, 'utf8')).replace('7.2', '7.3'))
  expect(await refusal(input, '--out', out)).toMatch(/a brief that .* names has changed since/u)
  expect(await done(input, '--out', out, '--restart')).toMatchObject({ lines: 5 })
})

test('so is one whose name is written with escapes', async () => {
  const { input, out, brief } = await files()
  await writeFile(input, '{"\\u0062rief":"br\\u0069ef.json"}\n')
  await done(input, '--out', out)
  await writeFile(brief, (await readFile(brief, 'utf8')).replace('7.2', '7.3'))
  expect(await refusal(input, '--out', out)).toMatch(/a brief that .* names has changed since/u)
})

test('answers of another version are not gone on with', async () => {
  const { input, out } = await files()
  await done(input, '--out', out)
  const beside = `${out}.sweep.json`
  const state = JSON.parse(await readFile(beside, 'utf8')) as { program: string }
  await writeFile(beside, JSON.stringify({ ...state, program: `0.0.1 ${state.program}` }))
  expect(await refusal(input, '--out', out)).toContain('by another version or other data')
})

describe('the lock of an output', () => {
  const owner = { host: hostname(), began: '', since: '2026-11-25T00:00:00.000Z' }
  /** No process has it: Linux gives numbers up to 2²². */
  const NOBODY = 2 ** 22 + 1

  test('keeps a second run out, which says who has it', async () => {
    const { input, out } = await files()
    await writeFile(`${out}.sweep.lock`, JSON.stringify({ ...owner, pid: process.pid }))
    expect(await refusal(input, '--out', out, '--restart')).toContain(
      `Process ${process.pid} on ${hostname()} has been writing this output since 2026`,
    )
  })

  test('of another machine is respected', async () => {
    const { input, out } = await files()
    await writeFile(
      `${out}.sweep.lock`,
      JSON.stringify({ ...owner, host: 'elsewhere', pid: NOBODY }),
    )
    expect(await refusal(input, '--out', out)).toMatch(/on elsewhere .* remove .*\.sweep\.lock/u)
  })

  test('of a process that has ended is taken over', async () => {
    const { folder, input, out } = await files()
    await writeFile(`${out}.sweep.lock`, JSON.stringify({ ...owner, pid: NOBODY }))
    await done(input, '--out', out)
    expect((await readdir(folder)).filter((name) => name.includes('lock'))).toEqual([])
  })

  test('of a process whose number another has by now is taken over', async () => {
    const { input, out } = await files()
    const lock = { ...owner, pid: process.pid, began: '1' }
    await writeFile(`${out}.sweep.lock`, JSON.stringify(lock))
    await done(input, '--out', out)
  })
})

test('of several runs on one output begun at once one writes, and no line is doubled', async () => {
  const { folder, input, out } = await files(3_000)
  const runs = [1, 2, 3].map(() =>
    start(['sweep', input, '--out', out, '--threads', '1', '--quiet']),
  )
  const codes = await Promise.all(runs.map(({ exit }) => exit))
  expect(codes).toContain(0)
  // Whoever came when it was done finds it done; whoever came before is refused.
  expect(codes.filter((code) => code !== 0 && code !== 2)).toEqual([])
  const lines = (await readFile(out, 'utf8')).trim().split('\n')
  expect(lines.map((line) => (JSON.parse(line) as { line: number }).line)).toEqual(
    Array.from({ length: 3_000 }, (_, index) => index + 1),
  )
  expect(
    (await readdir(folder)).filter((name) => name.startsWith(`${basename(out)}.sweep.lock`)),
  ).toEqual([])
})
