import { readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import { type Batch, NO_COUNTS } from '../../src/sweep/batch'
import { withSweep } from '../../src/sweep/begin'
import { briefTextsIn } from '../../src/sweep/brief-text'
import { steady, type SweepFiles } from '../../src/sweep/files'
import { LineSolver } from '../../src/sweep/line-solver'
import { SILENT } from '../../src/sweep/progress'
import { runSweep } from '../../src/sweep/run-sweep'
import { type Fault, faultyFiles, unsyncedFiles } from './faulty-files'
import { scenarios, sweepFolder, writeLines } from './sweeping'

const LINES = 12
const PER_BATCH = 4

const solver = new LineSolver(library)

/** One run in this process, which ends as it ends. */
async function run(folder: string, given: SweepFiles, restart = false): Promise<void> {
  const [input, out] = [join(folder, 'in.ndjson'), join(folder, 'out.ndjson')]
  const files = steady(given)
  const texts = briefTextsIn(folder)
  const answer = ({ firstLine, bytes }: Batch) => {
    const lines = new TextDecoder().decode(bytes).trim().split('\n')
    const answers = lines.map((line, at) => `${solver.answer(line, firstLine + at, texts).json}\n`)
    const text = new TextEncoder().encode(answers.join(''))
    return Promise.resolve({ bytes: text, counts: NO_COUNTS, tookMs: 1 })
  }
  await withSweep({ input, out, restart, program: 'test', files }, (beginning) =>
    runSweep({
      files,
      input,
      beginning,
      size: () => PER_BATCH,
      width: 1,
      answer,
      meter: SILENT,
      stop: new AbortController().signal,
    }),
  )
}

/** The folder as before any run, or with an older output that is to be written anew. */
async function fresh(folder: string, old: string | undefined): Promise<void> {
  const out = join(folder, 'out.ndjson')
  for (const end of [
    '',
    '.part',
    '.sweep.json',
    '.sweep.json.new',
    '.sweep.lock',
    '.sweep.lock.takeover',
  ])
    await rm(`${out}${end}`, { force: true })
  if (old === undefined) return
  await run(folder, unsyncedFiles)
  await writeFile(out, old)
}

const FAULTS: Readonly<Record<string, Fault>> = {
  ENOSPC: { code: 'ENOSPC' },
  EIO: { code: 'EIO' },
  EINTR: { code: 'EINTR' },
  'a short write': { short: true },
  'the end of all': { dead: true },
}

describe.each([
  ['anew', undefined],
  ['over an older output', '{"line":1,"old":true}\n'],
])('of a sweep %s each single call of a file fails in turn', (_, old) => {
  test.each(Object.keys(FAULTS))('by %s', async (name) => {
    const fault = FAULTS[name]
    if (!fault) throw new Error(`There is no fault ${name}`)
    const folder = await sweepFolder()
    await writeLines(join(folder, 'in.ndjson'), scenarios(LINES))
    const out = join(folder, 'out.ndjson')
    const restart = old !== undefined
    await fresh(folder, undefined)
    await run(folder, unsyncedFiles)
    const reference = await readFile(out, 'utf8')
    await fresh(folder, old)
    const counting = faultyFiles(unsyncedFiles, Infinity, fault)
    await run(folder, counting, restart)
    const calls = counting.calls()
    expect(calls).toBeGreaterThan(30)

    const outcomes = { done: 0, refused: 0 }
    for (let nth = 1; nth <= calls; nth++) {
      await fresh(folder, old)
      const where = `${name} at call ${nth} of ${calls}`
      const failed = await run(folder, faultyFiles(unsyncedFiles, nth, fault), restart).then(
        () => false,
        () => true,
      )
      outcomes[failed ? 'refused' : 'done']++
      // Whatever happened, an output is the old one or the new one, and never a part of either.
      const left = await readFile(out, 'utf8').catch(() => undefined)
      expect([old, reference], where).toContain(left)
      if (!failed) expect(left, where).toBe(reference)
      // The same command again comes to the same bytes; a lock that could not be removed is named.
      await rm(`${out}.sweep.lock`, { force: true })
      await rm(`${out}.sweep.lock.takeover`, { force: true })
      await run(folder, unsyncedFiles, restart)
      expect(await readFile(out, 'utf8'), where).toBe(reference)
    }
    const { done, refused } = outcomes
    const isMended = name === 'EINTR' || name === 'a short write'
    expect(isMended ? done : refused).toBeGreaterThan(calls / 3)
  })
})

test('a part with zeros in it, as a power cut leaves it, is gone on with from before them', async () => {
  const folder = await sweepFolder()
  await writeLines(join(folder, 'in.ndjson'), scenarios(LINES))
  const out = join(folder, 'out.ndjson')
  await run(folder, unsyncedFiles)
  const whole = await readFile(out)
  const torn = Buffer.from(whole)
  const at = whole.indexOf('\n', whole.length / 2) + 20
  torn.fill(0, at, at + 8)
  await rm(out)
  await writeFile(`${out}.part`, torn)
  await run(folder, unsyncedFiles)
  expect(await readFile(out)).toEqual(whole)
})
