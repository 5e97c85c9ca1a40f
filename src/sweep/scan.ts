import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import type { Place } from './lines'

const NEWLINE = 10

/** An input read through once. */
export interface InputScan {
  readonly sha256: string
  readonly bytes: number
  /** Where the line after so many begins; undefined where there are fewer. */
  readonly place: Place | undefined
}

/** Reads an input through for its hash, and finds where the line after the first `lines` begins. */
export async function scanInput(path: string, lines: number): Promise<InputScan> {
  const hash = createHash('sha256')
  let [bytes, seen, last] = [0, 0, NEWLINE]
  let offset = lines === 0 ? 0 : undefined
  for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
    hash.update(chunk)
    for (
      let at = chunk.indexOf(NEWLINE);
      at >= 0 && seen < lines;
      at = chunk.indexOf(NEWLINE, at + 1)
    )
      if (++seen === lines) offset = bytes + at + 1
    bytes += chunk.length
    last = chunk.at(-1) ?? last
  }
  if (offset === undefined && seen + 1 === lines && last !== NEWLINE) offset = bytes
  const place = offset === undefined ? undefined : { offset, lines }
  return { sha256: hash.digest('hex'), bytes, place }
}

/** An output as a run left it. */
export interface OutputScan {
  /** Whole lines, and the bytes they take; what lies behind is a line torn in the writing. */
  readonly lines: number
  readonly bytes: number
  /** The last whole line; empty where there is none. */
  readonly lastLine: string
}

/** Reads an output through for its whole lines; undefined where there is no such file. */
export async function scanOutput(path: string): Promise<OutputScan | undefined> {
  const file = await orMissing(open(path))
  if (!file) return undefined
  let [read, lines, before, end] = [0, 0, 0, 0]
  try {
    const stream = file.createReadStream({ autoClose: false }) as AsyncIterable<Buffer>
    for await (const chunk of stream) {
      for (let at = chunk.indexOf(NEWLINE); at >= 0; at = chunk.indexOf(NEWLINE, at + 1)) {
        lines++
        before = end
        end = read + at + 1
      }
      read += chunk.length
    }
    const last = Buffer.alloc(end - before)
    await file.read(last, 0, last.length, before)
    return { lines, bytes: end, lastLine: last.toString('utf8') }
  } finally {
    await file.close()
  }
}

/** What a look at a file came to; undefined where the file is not there. */
export async function orMissing<T>(look: Promise<T>): Promise<T | undefined> {
  try {
    return await look
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined
    throw error
  }
}
