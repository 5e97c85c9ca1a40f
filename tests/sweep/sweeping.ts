import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { copyFile, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { inject, onTestFinished } from 'vitest'
import { BRIEF, example } from '../cli/run-cli'

export const EXAMPLE = example('sweep.ndjson')

/** A folder of this test alone, with the example's brief in it. */
export async function sweepFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'barwright-sweep-'))
  onTestFinished(() => rm(folder, { recursive: true, force: true }))
  await copyFile(BRIEF, join(folder, 'brief.json'))
  return folder
}

/** A run of the command line that can be ended from outside. */
export interface Running {
  readonly exit: Promise<number | null>
  readonly errors: () => string
  readonly output: () => string
  readonly pid: number
  kill(signal: NodeJS.Signals): void
}

/** Starts the built tool; what is still running when the test ends is ended. */
export function start(args: readonly string[], nodeFlags: readonly string[] = []): Running {
  const tool = join(inject('builtCli'), 'barwright.js')
  const child = spawn(process.execPath, [...nodeFlags, tool, ...args], { cwd: tmpdir() })
  const text = { output: '', errors: '' }
  child.stdout.setEncoding('utf8').on('data', (piece: string) => (text.output += piece))
  child.stderr.setEncoding('utf8').on('data', (piece: string) => (text.errors += piece))
  const exit = once(child, 'close').then(([code]) => code as number | null)
  onTestFinished(() => void child.kill('SIGKILL'))
  return {
    exit,
    errors: () => text.errors,
    output: () => text.output,
    pid: child.pid ?? NaN,
    kill: (signal) => void child.kill(signal),
  }
}

/** The size of a file in bytes; 0 where there is none yet. */
export async function sizeOf(path: string): Promise<number> {
  try {
    return (await stat(path)).size
  } catch {
    return 0
  }
}

/** Waits for something to come true, looking every few milliseconds. */
export async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await isSo())) await wait(5)
}

/** The lines of a file of answers, parsed. */
export async function answersIn(path: string): Promise<Record<string, unknown>[]> {
  const text = await readFile(path, 'utf8')
  return text
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Record<string, unknown>)
}

/** Writes lines as values of JSON, or as they are where they are text. */
export async function writeLines(path: string, lines: readonly unknown[]): Promise<void> {
  const text = lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line)))
  await writeFile(path, `${text.join('\n')}\n`)
}

/** Other prices for the example's brief, the same for the same number; invented. */
export function scenario(number: number): object {
  const price = (from: number, factor: number, steps: number) =>
    from + ((number * factor) % steps) / 10
  return {
    key: `scenario ${number}`,
    brief: 'brief.json',
    prices: { olive: price(4, 7, 29), coconut: price(3, 13, 17), shea: price(7, 5, 19) },
  }
}

export function scenarios(count: number): object[] {
  return Array.from({ length: count }, (_, number) => scenario(number))
}

/** A brief whose search takes some milliseconds, so that a worker is always in the midst of a batch. */
const SLOW = {
  format: 'barwright-brief/1',
  oils: {
    olive: { max: 60 },
    coconut: { max: 35 },
    palm: { max: 40 },
    shea: { max: 20 },
    castor: { max: 10 },
    sunflower: { max: 30 },
    'cocoa-butter': { max: 15 },
    almond: { max: 20 },
  },
  measures: { hardness: { min: 38.2, max: 38.4 }, lather: { min: 28.1, max: 28.2 } },
  rules: { shareStep: 0.5, atMostOils: 5 },
  goal: { minimise: 'cost' },
}

/** So many such lines, each with prices of its own. */
export function slowLines(count: number): object[] {
  const oils = Object.keys(SLOW.oils)
  return Array.from({ length: count }, (_, number) => ({
    key: number,
    brief: SLOW,
    prices: Object.fromEntries(
      oils.map((oil, place) => [oil, 3 + ((number * 7 + place * 5) % 43) / 10]),
    ),
  }))
}
