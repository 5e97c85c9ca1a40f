import { spawn } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { inject } from 'vitest'
import type { main, Surroundings } from '../../src/cli/main'

/** The example files of tests/cases/files, by absolute path. */
export const BRIEF = example('brief.json')
export const BATCH = example('batch.json')

export interface Run {
  readonly exitCode: number | null
  readonly output: string
  readonly errors: string
}

/**
 * Runs the built command-line tool in this process, with `input` on standard input: the same files as a
 * call from a shell, without the start of a process each.
 */
export async function barwright(
  args: readonly string[],
  input: string | Uint8Array = '',
): Promise<Run> {
  const [stdout, stderr] = [new Caught(), new Caught()]
  const exitCode = await (
    await builtMain()
  )(args, {
    ...SURROUNDINGS,
    stdin: Readable.from([Buffer.from(input)]),
    stdout,
    stderr,
  })
  return { exitCode, output: stdout.text, errors: stderr.text }
}

/** Surroundings of a test: the real files, no variables, and nobody who sends signals. */
export const SURROUNDINGS: Omit<Surroundings, 'stdin' | 'stdout' | 'stderr'> = {
  env: {},
  readFile: (path) => readFile(path),
  onStop: () => () => undefined,
}

/** The tool's main function as it was built. */
export async function builtMain(): Promise<typeof main> {
  const path = pathToFileURL(join(inject('builtCli'), 'main.js')).href
  const built = (await import(/* @vite-ignore */ path)) as { readonly main: typeof main }
  return built.main
}

/** A stream that keeps what is written to it as text. */
export class Caught extends Writable {
  readonly #pieces: Buffer[] = []

  get text(): string {
    return Buffer.concat(this.#pieces).toString('utf8')
  }

  override _write(piece: Buffer, _encoding: BufferEncoding, done: () => void): void {
    this.#pieces.push(piece)
    done()
  }
}

/** Runs the built tool as a process, from a folder that is not its own: where the process is the point. */
export function barwrightProcess(args: readonly string[], input = ''): Promise<Run> {
  const tool = join(inject('builtCli'), 'barwright.js')
  const child = spawn(process.execPath, [tool, ...args], { cwd: tmpdir() })
  const chunks = { output: '', errors: '' }
  child.stdout.setEncoding('utf8').on('data', (text: string) => (chunks.output += text))
  child.stderr.setEncoding('utf8').on('data', (text: string) => (chunks.errors += text))
  // A call that reads no input may end before it is handed over.
  child.stdin.on('error', () => undefined).end(input)
  return new Promise((resolve, reject) => {
    child.once('error', reject)
    child.once('close', (exitCode) => resolve({ exitCode, ...chunks }))
  })
}

/** The same as `barwright`, with a value written as JSON on standard input. */
export function withInput(command: string, value: unknown): Promise<Run> {
  return barwright([command, '-'], JSON.stringify(value))
}

/** An example file of tests/cases/files, by absolute path. */
export function example(name: string): string {
  return fileURLToPath(new URL(`../cases/files/${name}`, import.meta.url))
}
