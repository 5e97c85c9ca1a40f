import { createHash } from 'node:crypto'
import { briefPathOf } from '../data/sweep-file'
import { LONGEST_LINE } from './batch'
import { piecesOf, type SweepFiles } from './files'

const NEWLINE = 10

/** An input read through once. */
export interface InputScan {
  readonly sha256: string
  readonly bytes: number
  /** A last line without an end counts. */
  readonly lines: number
  /** Where the line after the first so many begins; undefined where there are fewer. */
  readonly offset: number | undefined
  /** The paths of briefs that its lines name, as they stand there. */
  readonly briefs: ReadonlySet<string>
}

/** Reads an input through, and finds where the line after the first `answered` begins. */
export async function scanInput(
  files: SweepFiles,
  path: string,
  answered: number,
): Promise<InputScan> {
  const hash = createHash('sha256')
  const names = new NamedBriefs()
  let [bytes, lines, last] = [0, 0, NEWLINE]
  let offset = answered === 0 ? 0 : undefined
  for await (const piece of piecesOf(files, path)) {
    hash.update(piece)
    names.read(piece)
    for (let at = piece.indexOf(NEWLINE); at >= 0; at = piece.indexOf(NEWLINE, at + 1))
      if (++lines === answered) offset = bytes + at + 1
    bytes += piece.length
    last = piece.at(-1) ?? last
  }
  if (last !== NEWLINE && ++lines === answered) offset = bytes
  return { sha256: hash.digest('hex'), bytes, lines, offset, briefs: names.end() }
}

/** Finds the briefs that lines name by their paths, without reading the lines as a whole where it can. */
class NamedBriefs {
  readonly #found = new Set<string>()
  readonly #decoder = new TextDecoder()
  #rest = ''

  read(piece: Uint8Array): void {
    const lines = (this.#rest + this.#decoder.decode(piece, { stream: true })).split('\n')
    this.#rest = lines.pop() ?? ''
    for (const line of lines) this.#look(line)
    // A line that is too long is never answered, whatever it names.
    if (this.#rest.length > LONGEST_LINE) this.#rest = this.#rest.slice(0, LONGEST_LINE + 1)
  }

  end(): ReadonlySet<string> {
    this.#look(this.#rest)
    return this.#found
  }

  #look(line: string): void {
    if (line.length > LONGEST_LINE) return
    // A key may be written with escapes, which the pattern does not see.
    if (line.includes('\\u')) this.#add(briefPathOf(line))
    for (const [, literal = ''] of line.matchAll(BRIEF_BY_PATH)) {
      if (!literal.includes('\\')) this.#add(literal)
      else this.#add(briefPathOf(line))
    }
  }

  #add(path: string | undefined): void {
    if (path !== undefined) this.#found.add(path)
  }
}

const BRIEF_BY_PATH = /"brief"\s*:\s*"((?:[^"\\]|\\.)*)"/gu

/** Answers as a run left them. */
export interface AnswersScan {
  /** Lines from the first on that are whole and in order, and the bytes they take. */
  readonly lines: number
  readonly bytes: number
  /** Of the whole file; what lies behind the whole lines was torn in the writing. */
  readonly size: number
}

/**
 * Reads answers through: line n must begin as the answer to line n does, and hold no zero byte, which is
 * what a power cut may leave of what had not reached the disk.
 */
export async function scanAnswers(files: SweepFiles, path: string): Promise<AnswersScan> {
  let [lines, bytes, size, isSound] = [0, 0, 0, true]
  let rest: Buffer = Buffer.alloc(0)
  for await (const piece of piecesOf(files, path)) {
    size += piece.length
    if (!isSound) continue
    const text = rest.length > 0 ? Buffer.concat([rest, piece]) : piece
    let from = 0
    for (let to = text.indexOf(NEWLINE); isSound && to >= 0; to = text.indexOf(NEWLINE, from)) {
      isSound = isAnswer(text.subarray(from, to), lines + 1)
      if (!isSound) break
      lines++
      bytes += to + 1 - from
      from = to + 1
    }
    rest = text.subarray(from)
  }
  return { lines, bytes, size }
}

function isAnswer(line: Buffer, number: number): boolean {
  const start = `{"line":${number},`
  return line.subarray(0, start.length).equals(Buffer.from(start)) && !line.includes(0)
}
