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
  const batch = new OpenBatch(lines + 1, offset)
  for await (const chunk of createReadStream(path, { start: offset }) as AsyncIterable<Buffer>) {
    for (let from = 0; from < chunk.length;) {
      from = batch.take(chunk, from)
      if (batch.isFull) yield batch.close()
    }
  }
  batch.endLine()
  if (!batch.isEmpty) yield batch.close()
}

/** A batch being filled, one after another. */
class OpenBatch {
  #parts: Uint8Array[] = []
  #firstLine: number
  #nextLine: number
  #lineBytes = 0

  constructor(
    firstLine: number,
    private offset: number,
  ) {
    this.#firstLine = this.#nextLine = firstLine
  }

  get isEmpty(): boolean {
    return this.#nextLine === this.#firstLine
  }

  get isFull(): boolean {
    return !this.isEmpty && (this.#nextLine - 1) % LINES_PER_BATCH === 0
  }

  /** Takes lines from a place in a chunk on, to its end or until the batch is full; returns how far it came. */
  take(chunk: Buffer, start: number): number {
    let [from, kept] = [start, start]
    while (from < chunk.length && (from === start || !this.isFull)) {
      const newline = chunk.indexOf(NEWLINE, from)
      const to = newline < 0 ? chunk.length : newline + 1
      this.#lineBytes += to - from
      const over = this.#lineBytes - LONGEST_LINE - 1
      if (over > 0) {
        // Of a line that is too long only what shows that it is.
        this.#parts.push(chunk.subarray(kept, Math.max(from, to - over)))
        if (newline >= 0) this.#parts.push(Uint8Array.of(NEWLINE))
        kept = to
      }
      if (newline >= 0) this.#endOf()
      from = to
    }
    if (from > kept) this.#parts.push(chunk.subarray(kept, from))
    this.offset += from - start
    return from
  }

  /** Ends a last line that has no newline. */
  endLine(): void {
    if (this.#lineBytes > 0) this.#endOf()
  }

  /** The batch as it is; the next one begins behind it. */
  close(): Batch {
    const batch = {
      firstLine: this.#firstLine,
      count: this.#nextLine - this.#firstLine,
      bytes: joined(this.#parts),
      endOffset: this.offset,
    }
    this.#parts = []
    this.#firstLine = this.#nextLine
    return batch
  }

  #endOf(): void {
    this.#nextLine++
    this.#lineBytes = 0
  }
}

/** Parts in one array with memory of its own, so that it can be handed to a thread without a copy. */
function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}
