import { type Batch, LONGEST_LINE } from './batch'
import { piecesOf, type SweepFiles } from './files'

/** A batch of so many bytes is closed, however few lines it has. */
const MOST_BYTES = 1024 * 1024

/** How many lines the batch that begins with a line is to have. */
export type BatchSize = (firstLine: number) => number

const NEWLINE = 10

/** A place in a file: the bytes before it, and the lines that end in them. */
export interface FilePlace {
  readonly offset: number
  readonly lines: number
}

/**
 * The lines of a file from a place on, in batches, reading no further than asked. A line over
 * `LONGEST_LINE` comes cut off just beyond it, so that no line, however long, fills memory.
 */
export async function* batchesOf(
  files: SweepFiles,
  path: string,
  { offset, lines }: FilePlace,
  size: BatchSize,
): AsyncGenerator<Batch> {
  const batch = new OpenBatch(lines + 1, offset, size)
  for await (const chunk of piecesOf(files, path, offset)) {
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
  /** The line that is no more in it. */
  #endLine: number
  #bytes = 0
  #lineBytes = 0

  constructor(
    firstLine: number,
    private offset: number,
    private readonly size: BatchSize,
  ) {
    this.#firstLine = this.#nextLine = firstLine
    this.#endLine = firstLine + size(firstLine)
  }

  get isEmpty(): boolean {
    return this.#nextLine === this.#firstLine
  }

  get isFull(): boolean {
    return this.#nextLine >= this.#endLine || (!this.isEmpty && this.#bytes >= MOST_BYTES)
  }

  /** Takes lines from a place in a chunk on, to its end or until the batch is full; returns how far it came. */
  take(chunk: Buffer, start: number): number {
    let [from, kept] = [start, start]
    while (from < chunk.length && (from === start || !this.isFull)) {
      const newline = chunk.indexOf(NEWLINE, from)
      const to = newline < 0 ? chunk.length : newline + 1
      this.#lineBytes += to - from
      this.#bytes += to - from
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
    this.#bytes = 0
    this.#firstLine = this.#nextLine
    this.#endLine = this.#firstLine + this.size(this.#firstLine)
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
