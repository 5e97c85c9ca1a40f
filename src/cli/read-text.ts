import { buffer } from 'node:stream/consumers'
import { decodeText } from '../data/text-encoding'
import type { Surroundings } from './surroundings'

/** Longest file that is read at once, in bytes; a price list of ten thousand packs stays far below. */
const LONGEST_FILE = 32 * 1024 * 1024

/** The text of a file or of standard input, or why there is none. */
export async function readText(
  path: string,
  around: Surroundings,
): Promise<{ readonly text: string } | { readonly message: string }> {
  let bytes: Uint8Array
  try {
    bytes = path === '-' ? await buffer(around.stdin) : await around.readFile(path)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    return { message: `The file ${path} can't be read: ${reason}` }
  }
  if (bytes.length > LONGEST_FILE)
    return {
      message: `The file ${path} has ${bytes.length} bytes. Give at most ${LONGEST_FILE}; sweep reads longer ones.`,
    }
  return decodeText(bytes)
}
