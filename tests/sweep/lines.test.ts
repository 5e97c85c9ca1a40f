import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Batch, LONGEST_LINE, NO_COUNTS } from '../../src/sweep/batch'
import { withSweep } from '../../src/sweep/begin'
import { systemFiles } from '../../src/sweep/files'
import { FittingBatch } from '../../src/sweep/fitting-batch'
import { inOrder } from '../../src/sweep/in-order'
import { SweepStopped } from '../../src/sweep/faults'
import { batchesOf } from '../../src/sweep/lines'
import { SILENT } from '../../src/sweep/progress'
import { runSweep } from '../../src/sweep/run-sweep'
import { scanInput } from '../../src/sweep/scan'
import { sweepFolder } from './sweeping'

const LINES = 64

async function batches(path: string, place = { offset: 0, lines: 0 }): Promise<Batch[]> {
  const found: Batch[] = []
  for await (const batch of batchesOf(
    systemFiles,
    path,
    place,
    (line) => LINES - ((line - 1) % LINES),
  ))
    found.push(batch)
  return found
}

const textOf = (found: readonly Batch[]) =>
  Buffer.concat(found.map(({ bytes }) => bytes)).toString('utf8')

test('batches hold every line of a file in order, from any line on', async () => {
  const path = join(await sweepFolder(), 'in.ndjson')
  const line = fc.string({ maxLength: 3 }).map((text) => text.replaceAll('\n', ''))
  await fc.assert(
    fc.asyncProperty(
      fc.array(line, { maxLength: 200 }),
      fc.boolean(),
      fc.nat(),
      async (lines, ends, pick) => {
        const text = lines.join('\n') + (ends && lines.length > 0 ? '\n' : '')
        const count = text === '' ? 0 : text.split('\n').length - (text.endsWith('\n') ? 1 : 0)
        await writeFile(path, text)
        const whole = await batches(path)
        expect(textOf(whole)).toBe(text)
        expect(whole.reduce((sum, one) => sum + one.count, 0)).toBe(count)
        for (const { firstLine } of whole.slice(1)) expect((firstLine - 1) % LINES).toBe(0)
        const done = pick % (count + 1)
        const { offset = NaN, lines: counted } = await scanInput(systemFiles, path, done)
        expect(counted).toBe(count)
        const rest = await batches(path, { offset, lines: done })
        const expected = text.split('\n').slice(done).join('\n')
        expect(textOf(rest)).toBe(offset === text.length ? '' : expected)
        expect(rest.reduce((sum, one) => sum + one.count, 0)).toBe(count - done)
        expect((await scanInput(systemFiles, path, count + 1)).offset).toBeUndefined()
      },
    ),
    { numRuns: 60 },
  )
})

test('a line that is too long comes cut off, and the next one whole', async () => {
  const path = join(await sweepFolder(), 'in.ndjson')
  await writeFile(path, `${'x'.repeat(3 * LONGEST_LINE)}\nnext\n`)
  const [batch] = await batches(path)
  const [long, next] = textOf(batch ? [batch] : []).split('\n')
  expect(long).toHaveLength(LONGEST_LINE + 1)
  expect(next).toBe('next')
})

test('no more than the width is in hand, and results come in the order of the items', async () => {
  async function* items() {
    for (let item = 0; item < 40; item++) yield await Promise.resolve(item)
  }
  let [inHand, most] = [0, 0]
  const handed: number[] = []
  await inOrder(
    items(),
    4,
    async (item) => {
      most = Math.max(most, ++inHand)
      // Later items are done sooner within a window.
      await new Promise((resolve) => setTimeout(resolve, 4 - (item % 4)))
      return 10 * item
    },
    async (_, result) => {
      handed.push(result)
      inHand--
      await Promise.resolve()
    },
  )
  expect(handed).toEqual(Array.from({ length: 40 }, (_, item) => 10 * item))
  expect(most).toBe(4)
})

test('a sweep that has to stop keeps what was written before, and says so', async () => {
  const folder = await sweepFolder()
  const [input, out] = [join(folder, 'in.ndjson'), join(folder, 'out.ndjson')]
  await writeFile(input, '{}\n'.repeat(3 * LINES))
  const asked = { input, out, restart: false, program: 'test', files: systemFiles }
  const run = withSweep(asked, (beginning) =>
    runSweep({
      files: systemFiles,
      input,
      beginning,
      width: 1,
      size: () => LINES,
      answer: ({ firstLine }) =>
        firstLine === 1
          ? Promise.resolve({
              bytes: new TextEncoder().encode('first\n'),
              counts: NO_COUNTS,
              tookMs: 1,
            })
          : Promise.reject(new Error('the thread died')),
      meter: SILENT,
      stop: new AbortController().signal,
    }),
  )
  await expect(run).rejects.toThrow(SweepStopped)
  await expect(run).rejects.toThrow(
    'The sweep had to stop: the thread died. What is written stays; the same command goes on from there.',
  )
  expect(await readFile(`${out}.part`, 'utf8')).toBe('first\n')
})

test('hard lines travel few at a time and easy ones many, up to a limit', () => {
  const batch = new FittingBatch()
  for (let round = 0; round < 20; round++) batch.took(batch.perBatch, 0.03 * batch.perBatch)
  expect(batch.perBatch).toBe(512)
  batch.took(512, 512 * 20)
  expect(batch.perBatch).toBe(1)
  batch.took(1, 4_000)
  expect(batch.perBatch).toBe(1)
})
