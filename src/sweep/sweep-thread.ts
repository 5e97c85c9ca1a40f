import { library } from '../data/library'
import { type Answered, type BriefText, NO_COUNTS, type Task } from './batch'
import { briefTextsIn } from './brief-text'
import { type BriefTexts, LineSolver } from './line-solver'
import { Recent } from './recent'

/** Kept between tasks, with the solvers of the briefs last met. */
const solver = new LineSolver(library)

/** A pool serves one folder. */
const folders = new Recent<BriefTexts>(1)

/** Answers a batch of lines in their order. A thread of the pool does one batch at a time. */
export function answerBatch({ firstLine, bytes, briefs }: Task): Answered {
  const texts =
    typeof briefs === 'string' ? folders.get(briefs, () => briefTextsIn(briefs)) : given(briefs)
  const startMs = performance.now()
  const answers: string[] = []
  const counts = { ...NO_COUNTS }
  linesIn(bytes).forEach((line, index) => {
    const { status, json } = solver.answer(line, firstLine + index, texts)
    answers.push(json, '\n')
    counts[status]++
  })
  const written = new TextEncoder().encode(answers.join(''))
  return { bytes: written, counts, tookMs: performance.now() - startMs }
}

function linesIn(bytes: Uint8Array): string[] {
  const lines = new TextDecoder().decode(bytes).split('\n')
  return lines.at(-1) === '' ? lines.slice(0, -1) : lines
}

function given(briefs: Readonly<Record<string, BriefText>>): BriefTexts {
  return (path) => (Object.hasOwn(briefs, path) ? briefs[path] : undefined) ?? { code: 'ENOENT' }
}
