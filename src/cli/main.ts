import type { Writable } from 'node:stream'
import { EXIT, failed, type Result } from './command'
import { run } from './run'
import type { Surroundings } from './surroundings'

export type { Surroundings } from './surroundings'

/**
 * Runs one call and prints its answer; the exit code. Whatever goes wrong inside is told as
 * `{"status":"failed","message"}` and ends with 1: no trace is ever shown.
 */
export async function main(args: readonly string[], around: Surroundings): Promise<number> {
  const { exitCode, text } = await answer(args, around)
  if (text === undefined) return exitCode
  const fault = await write(around.stdout, text)
  // Who reads no further has what they wanted.
  if (fault === undefined || fault.code === 'EPIPE') return exitCode
  const message = `The answer could not be written: ${fault.message}. Make room, or write it elsewhere.`
  await write(around.stderr, printed(failed(message)) ?? '')
  return EXIT.failed
}

async function answer(
  args: readonly string[],
  around: Surroundings,
): Promise<{ readonly exitCode: number; readonly text: string | undefined }> {
  try {
    const result = await run(args, around)
    return { exitCode: result.exitCode, text: printed(result) }
  } catch (error) {
    const result = failed(error)
    return { exitCode: result.exitCode, text: printed(result) }
  }
}

/** What a result prints. */
export function printed({ output }: Result): string | undefined {
  if (output === undefined) return undefined
  return `${typeof output === 'string' ? output : JSON.stringify(output, null, 2)}\n`
}

/** Writes a text out to the last byte, or tells what hindered it. */
function write(stream: Writable, text: string): Promise<NodeJS.ErrnoException | undefined> {
  return new Promise((resolve) => {
    stream.once('error', resolve)
    stream.write(text, (error) => {
      if (!error) stream.off('error', resolve)
      resolve(error ?? undefined)
    })
  })
}
