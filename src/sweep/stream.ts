import { once } from 'node:events'
import type { Readable, Writable } from 'node:stream'
import { library } from '../data/library'
import { type Counts, LONGEST_LINE, NO_COUNTS } from './batch'
import { briefTextsIn } from './brief-text'
import { LineSolver } from './line-solver'

/**
 * Answers each line of a stream as soon as it is whole, with a line of its own: whoever writes one line and
 * waits has the answer, for as long as the stream lasts. Paths of briefs start at `folder`.
 */
export async function answerStream(
  input: Readable,
  output: Writable,
  folder: string,
): Promise<Counts> {
  const solver = new LineSolver(library)
  const texts = briefTextsIn(folder)
  const counts = { ...NO_COUNTS }
  let line = 0
  const answer = async (text: string) => {
    const { status, json } = solver.answer(text, ++line, texts)
    counts[status]++
    if (!output.write(`${json}\n`)) await once(output, 'drain')
  }
  const decoder = new TextDecoder()
  let rest = ''
  for await (const piece of input as AsyncIterable<Buffer>) {
    const lines = (rest + decoder.decode(piece, { stream: true })).split('\n')
    rest = lines.pop() ?? ''
    for (const text of lines) await answer(text)
    // Of a line that is too long only what shows that it is.
    if (rest.length > LONGEST_LINE) rest = rest.slice(0, LONGEST_LINE + 1)
  }
  if (rest !== '') await answer(rest)
  return counts
}
