import { briefOfLibrary, briefOf } from '../data/brief-file'
import { parseJson, type Parsed } from '../data/problems'
import { readSweepLine, type SweepScenario } from '../data/sweep-file'
import type { Problem } from '../domain/blend/check-blend'
import type { Library } from '../domain/blend/library'
import { PriceSolver } from '../domain/optimise/reprice/price-solver'
import type { Answer } from '../domain/optimise/brief/answer'
import { type BriefText, LONGEST_LINE, type Status } from './batch'
import { Recent } from './recent'

/** The answer to one line, ready to be written. */
export interface LineAnswer {
  readonly status: Status
  readonly json: string
}

/** Where the text of a brief is had by its path. */
export type BriefTexts = (path: string) => BriefText

/** An error on one line, which is told and does not stop the rest. */
interface Fault {
  readonly status: 'failed'
  readonly message: string
}

/** A brief with its warm solver, or what is wrong with the brief. */
type Known = Parsed<PriceSolver>

/** Briefs whose solvers are kept, at some tens of kB each. */
const MOST_SOLVERS = 64

/**
 * Answers the lines of a sweep, keeping the solvers of the briefs last met. What is kept saves time and
 * never changes an answer: it depends on the line and the brief it names alone.
 */
export class LineSolver {
  readonly #solvers = new Recent<Known>(MOST_SOLVERS)

  constructor(private readonly library: Library) {}

  /** The answer to a line of the file, the first being line 1. */
  answer(text: string, line: number, briefTexts: BriefTexts): LineAnswer {
    const { key, answer } = this.#solved(text, briefTexts)
    const status = answer.status === 'optimal' ? 'solved' : answer.status
    return { status, json: JSON.stringify({ line, key, ...answer, status }) }
  }

  #solved(text: string, briefTexts: BriefTexts) {
    if (Buffer.byteLength(text) > LONGEST_LINE)
      return refused(`The line is longer than ${LONGEST_LINE} bytes. Put its brief into a file.`)
    if (text.trim() === '')
      return refused('The line is empty. Give a brief, or a brief and prices.')
    const read = readSweepLine(text)
    if (read.status === 'invalid') return { answer: read }
    if (read.value.kind === 'brief') {
      const brief = briefOf(read.value.brief)
      return { answer: orFault(() => new PriceSolver(brief, this.library).solve({})) }
    }
    const { scenario } = read.value
    return { key: scenario.key, answer: orFault(() => this.#priced(scenario, briefTexts)) }
  }

  #priced({ brief, prices }: SweepScenario, briefTexts: BriefTexts): Answer {
    const strangers = Object.keys(prices).filter((oil) => !this.library.oils.has(oil))
    if (strangers.length > 0) return invalid(strangers.map(unknownPrice))
    const known = this.#known(brief, briefTexts)
    if (known.status === 'invalid') return known
    const answer = known.value.solve(prices)
    return answer.status === 'invalid' ? invalid(answer.problems.map(inBrief)) : answer
  }

  #known(brief: SweepScenario['brief'], briefTexts: BriefTexts): Known {
    if (typeof brief !== 'string')
      return this.#solvers.get(`in place: ${JSON.stringify(brief)}`, () => ({
        status: 'parsed',
        value: new PriceSolver(briefOf(brief), this.library),
      }))
    const found = briefTexts(brief)
    if ('text' in found)
      return this.#solvers.get(found.text, () => openBriefText(found.text, this.library))
    const message = `The brief ${brief} can't be read: ${found.code}. Paths start at the folder of the sweep's file.`
    return invalid([{ path: 'brief', message }])
  }
}

function openBriefText(text: string, library: Library): Known {
  const file = parseJson(briefOfLibrary, text)
  if (file.status === 'invalid') return invalid(file.problems.map(inBrief))
  return { status: 'parsed', value: new PriceSolver(briefOf(file.value), library) }
}

function orFault(answer: () => Answer): Answer | Fault {
  try {
    return answer()
  } catch (error) {
    return { status: 'failed', message: error instanceof Error ? error.message : String(error) }
  }
}

function refused(message: string) {
  return { answer: invalid([{ path: '', message }]) }
}

function invalid(problems: readonly Problem[]) {
  return { status: 'invalid', problems } as const
}

function inBrief({ path, message }: Problem): Problem {
  return { path: path === '' ? 'brief' : `brief.${path}`, message }
}

function unknownPrice(oil: string): Problem {
  const message = `There is no oil "${oil}" in the library. The command oils lists their ids.`
  return { path: `prices.${oil}`, message }
}
