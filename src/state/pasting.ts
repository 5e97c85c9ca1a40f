import type { MixedMeaning } from '../data/formula-text'
import type { Work } from './work'

/** A formula being typed or pasted, before it is the bar in hand. */
export interface Pasting {
  readonly text: string
  /** How percent beside weights are meant, once that was asked. */
  readonly mixed?: MixedMeaning | undefined
}

/** No formula is longer, in characters; more than this is not kept. */
const LONGEST_TEXT = 100_000

/** The work with what is typed changed; with nothing typed, put away. */
export function withPasted(work: Work, change: Partial<Pasting>): Work {
  const { text, mixed } = { text: '', ...work.pasting, ...change }
  const pasting = text === '' ? undefined : { text: text.slice(0, LONGEST_TEXT), mixed }
  return { ...work, pasting }
}
