import { createReadStream } from 'node:fs'
import { type Batch, LONGEST_LINE } from './batch'

/** Lines that go to a thread at once: some milliseconds of work. Batches end at multiples of it. */
export const LINES_PER_BATCH = 128

const NEWLINE = 10

/** A place in a file: the bytes before it, and the lines that end in them. */
export interface Place {
  readonly offset: number
  readonly lines: number
}

/**
 * The lines of a file from a place on, in batches, reading no further than asked. A line over
 * `LONGEST_LINE` comes cut off just beyond it, so that no line, however long, fills memory.
 */
export async function* batchesOf(path: string, { offset, lines }: Place): AsyncGenerator<Batch> {
  let batch = new OpenBatch(lines + 1)
  let at = offset
  for await (const chunk of createReadStream(path, { start: offset }) as AsyncIterable<Buffer>) {
    for (let from = 0; from < chunk.length;) {
      const newline = chunk.indexOf(NEWLINE, from)
      const to = newline < 0 ? chunk.length : newline + 1
      batch.add(chunk.subarray(from, to), newline >= 0)
      at += to - from
      from = to
      if (batch.isFull) {
        yield batch.closed(at)
        batch = new OpenBatch(batch.nextLine)
      }
    }
  }
  batch.endLine()
  if (batch.nextLine > batch.firstLine) yield batch.closed(at)
}

/** A batch being filled. */
class OpenBatch {
  readonly #parts: Uint8Array[] = []
  #lineBytes = 0
  nextLine: number

  constructor(readonly firstLine: number) {
    this.nextLine = firstLine
  }

  get isFull(): boolean {
    return this.nextLine > this.firstLine && (this.nextLine - 1) % LINES_PER_BATCH === 0
  }

  /** Takes a piece of a line; of one that is too long only what shows that it is. */
  add(piece: Buffer, ends: boolean): void {
    const room = LONGEST_LINE + 1 - this.#lineBytes
    if (room > 0) this.#parts.push(piece.subarray(0, room))
    this.#lineBytes += piece.length
    if (!ends) return
    if (this.#lineBytes > LONGEST_LINE + 1) this.#parts.push(Uint8Array.of(NEWLINE))
    this.#endOf()
  }

  /** Ends a last line that has no newline. */
  endLine(): void {
    if (this.#lineBytes > 0) this.#endOf()
  }

  closed(endOffset: number): Batch {
    const bytes = Buffer.concat(this.#parts)
    return { firstLine: this.firstLine, count: this.nextLine - this.firstLine, bytes, endOffset }
  }

  #endOf(): void {
    this.nextLine++
    this.#lineBytes = 0
  }
}
