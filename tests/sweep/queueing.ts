import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect } from 'vitest'
import { type Running, start, sweepFolder, writeLines } from './sweeping'

/** Lines to sweep, and their answers as a run on this machine alone writes them. */
export interface Expected {
  readonly input: string
  readonly out: string
  readonly expected: Buffer
}

export async function answered(lines: readonly unknown[]): Promise<Expected> {
  const folder = await sweepFolder()
  const pathOf = (name: string) => join(folder, `${name}.ndjson`)
  await writeLines(pathOf('in'), lines)
  expect(await start(['sweep', pathOf('in'), '--out', pathOf('here')]).exit).toBe(0)
  return { input: pathOf('in'), out: pathOf('out'), expected: await readFile(pathOf('here')) }
}

export function startWorker(url: string, nodeFlags: readonly string[] = []): Running {
  return start(['sweep', '--work', url, '--threads', '1'], nodeFlags)
}

export function startCollector(url: string, { input, out }: Pick<Expected, 'input' | 'out'>) {
  return start(['sweep', input, '--out', out, '--queue', url])
}

/** How often something is said in a text. */
export function timesIn(text: string, words: string): number {
  return text.split(words).length - 1
}
