import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { batchFile, orderOf } from '../../src/data/batch-file'
import { batchPin } from '../../src/domain/batch/release/pin'
import { CAUTION_WORDS } from '../setup/caution-words'
import { barwright, BATCH, type Run } from './run-cli'

/** Runs a command on a value written as JSON on standard input, with flags. */
function withInput(command: string, value: unknown, ...flags: string[]): Promise<Run> {
  return barwright([command, ...flags, '-'], JSON.stringify(value))
}

const QUOTE = fileURLToPath(new URL('../cases/files/quote.json', import.meta.url))

type Json = Record<string, unknown>
const batch = {
  ...(JSON.parse(readFileSync(BATCH, 'utf8')) as Json),
  superfat: 12,
  papers: { madeOn: '2026-01-10' },
}
const quote = JSON.parse(readFileSync(QUOTE, 'utf8')) as Json & { batch: Json }

const TEST = {
  way: 'titration',
  on: '2026-02-10',
  who: 'M.',
  bar: '7',
  acidMl: 0.4,
  normality: 0.1,
  sampleG: 5,
}

async function told(file: Json) {
  const { output, errors } = await withInput('batch', file)
  expect(errors).toBe('')
  return JSON.parse(output) as { release: { state: string; pin: string; says: string } }
}

/** The batch with a test pinned to it. */
function tested(change: Json = {}) {
  const pin = batchPin(orderOf(batchFile.parse(batch)), {})
  return { ...batch, release: { tests: [{ ...TEST, batch: pin, ...change }] } }
}

test('batch, label and quote say not released while no test stands', async () => {
  expect((await told(batch)).release.state).toBe('notReleased')
  const runs = await Promise.all([
    withInput('label', batch),
    withInput('label', batch, '--text'),
    withInput('quote', quote),
    withInput('quote', quote, '--html'),
  ])
  for (const { output } of runs) expect(output).toContain('Not released')
})

test('a test pinned to the batch is said on its label, with what the limit rests on', async () => {
  const file = tested()
  const { release } = await told(file)
  expect(release).toMatchObject({ state: 'testPassed', pin: file.release.tests[0]?.batch })
  const { output } = await withInput('label', file, '--text')
  expect(output).not.toContain('Not released')
  // By hand: 0.4 ml x 0.1 N x 4.0 / 5 g.
  expect(output).toContain('0.032 % free alkali as NaOH')
  expect(output).toContain('assumption')
})

test('another superfat in the file voids it', async () => {
  const { release } = await told({ ...tested(), superfat: 11 })
  expect(release.state).toBe('notReleased')
})

test('nonsense ends with 2, its path and its limit', async () => {
  for (const command of ['batch', 'label'] as const) {
    const { exitCode, output } = await withInput(command, tested({ normality: 10 }))
    expect(exitCode).toBe(2)
    expect(output).toContain('release.tests[0].normality')
    expect(output).toContain('0.005 to 1 N')
  }
})

test('batch and its sheets say all that the cautions must', async () => {
  const runs = [[], ['--sheet', 'text'], ['--sheet', 'html']].map((flags) =>
    withInput('batch', batch, ...flags),
  )
  for (const { output } of await Promise.all(runs))
    for (const [what, words] of CAUTION_WORDS) expect(output, what).toMatch(words)
})
