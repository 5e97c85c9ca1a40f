import { spawn } from 'node:child_process'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { inject } from 'vitest'

/** The example files of tests/cases/files, by absolute path. */
export const BRIEF = example('brief.json')
export const BATCH = example('batch.json')

export interface Run {
  readonly exitCode: number | null
  readonly output: string
  readonly errors: string
}

/** Runs the built command-line tool from a folder that is not its own, with `input` on standard input. */
export function barwright(args: readonly string[], input = ''): Promise<Run> {
  const tool = join(inject('builtCli'), 'barwright.js')
  const child = spawn(process.execPath, [tool, ...args], { cwd: tmpdir() })
  const chunks = { output: '', errors: '' }
  child.stdout.setEncoding('utf8').on('data', (text: string) => (chunks.output += text))
  child.stderr.setEncoding('utf8').on('data', (text: string) => (chunks.errors += text))
  child.stdin.end(input)
  return new Promise((resolve, reject) => {
    child.once('error', reject)
    child.once('close', (exitCode) => resolve({ exitCode, ...chunks }))
  })
}

/** The same, with a value written as JSON on standard input. */
export function withInput(command: string, value: unknown): Promise<Run> {
  return barwright([command, '-'], JSON.stringify(value))
}

/** An example file of tests/cases/files, by absolute path. */
export function example(name: string): string {
  return fileURLToPath(new URL(`../cases/files/${name}`, import.meta.url))
}
