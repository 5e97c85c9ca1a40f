import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import type { Page } from 'playwright-core'
import { inject } from 'vitest'
import { library } from '../../src/data/library'
import type { BatchFile } from '../../src/data/batch-file'
import type { BriefFile } from '../../src/data/brief-file'
import { COST } from '../../src/domain/blend/measure'
import { oilId, shelfNames, typed } from './brief-page'

/** How a command ended and the JSON it printed. */
interface Answer<T> {
  readonly exitCode: number | null
  readonly output: T
}

/** Runs the built command line on a file given through standard input. */
export async function barwright<T>(
  command: 'solve' | 'batch',
  file: BriefFile | BatchFile,
  ...flags: readonly string[]
): Promise<Answer<T>> {
  const script = join(inject('builtCli'), 'barwright.js')
  const child = spawn(process.execPath, [script, command, '-', ...flags], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const ended = new Promise<number | null>((done, fail) => {
    child.once('error', fail)
    child.once('close', done)
  })
  child.stdin.end(JSON.stringify(file))
  const output = JSON.parse(await text(child.stdout)) as T
  return { exitCode: await ended, output }
}

/** The brief that the page shows, read off its fields; the goal is what the sentence asks for. */
export async function briefOnPage(page: Page, goal: BriefFile['goal']): Promise<BriefFile> {
  const oils: BriefFile['oils'] = {}
  for (const name of await shelfNames(page))
    oils[oilId(name)] = {
      pricePerKg: await typed(page, `Price of ${name}, per kg`),
      min: await typed(page, `${name}, at least, %`),
      max: await typed(page, `${name}, at most, %`),
    }
  const measures: NonNullable<BriefFile['measures']> = {}
  for (const { id, name } of library.measures.filter(({ shown }) => shown))
    measures[id] = {
      min: await typed(page, `${name}, at least`),
      max: await typed(page, `${name}, at most`),
    }
  return { format: 'barwright-brief/1', oils, measures, goal }
}

/** The batch that the page shows, for a blend, with sodium hydroxide and a lye concentration. */
export async function batchOnPage(page: Page, blend: BatchFile['blend']): Promise<BatchFile> {
  const read = async (name: string) => {
    const value = await typed(page, name)
    if (value === undefined) throw new Error(`${name} is empty`)
    return value
  }
  const stepG = Number.parseFloat(
    await page.getByRole('combobox', { name: /^Scale step/u }).innerText(),
  )
  return {
    format: 'barwright-batch/1',
    blend,
    oilGrams: await read('Weight of all oils, g'),
    alkali: { naoh: 100 },
    purity: { naoh: await read('Purity, %') },
    superfat: await read('Superfat, %'),
    water: { lyeConcentration: await read('Water as lye concentration, %') },
    scale: { oilStepG: stepG, lyeStepG: stepG },
  }
}

/** Cost per kg of a solved brief. */
export const costOf = (measures: Readonly<Record<string, number>>): number => measures[COST] ?? NaN
