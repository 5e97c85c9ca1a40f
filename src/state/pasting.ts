import type { FormulaAnswers } from '../data/formula-outcome'
import type { Work } from './work'

/** A recipe being typed or pasted, with what was said to its questions, before it is the bar in hand. */
export interface Pasting extends FormulaAnswers {
  readonly text: string
}

/** No recipe is longer, in characters; more than this is not kept. */
const LONGEST_TEXT = 100_000

/** The work with what is typed changed; with nothing typed, put away. */
export function withPasted(work: Work, change: Partial<Pasting>): Work {
  const { text, ...answers } = { text: '', ...work.pasting, ...change }
  return {
    ...work,
    pasting: text === '' ? undefined : { ...answers, text: text.slice(0, LONGEST_TEXT) },
  }
}
