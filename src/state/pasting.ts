import type { MixedMeaning } from '../data/formula-text'
import { library } from '../data/library'
import type { Formula } from './draft'
import { withFormula } from './formula'
import type { Work } from './work'

/** A formula being typed or pasted, before its oils go to the shelf. */
export interface Pasting {
  readonly text: string
  readonly name: string
  /** How percent beside weights are meant, once that was asked. */
  readonly mixed?: MixedMeaning | undefined
  /** Whether all other oils leave the shelf. */
  readonly only: boolean
}

/** No formula is longer, in characters; more than this is not kept. */
const LONGEST_TEXT = 100_000

/** The work with a formula being typed: the one made now, or none yet. */
export function withPastingBegun(work: Work): Work {
  const { formula } = work.brief
  const lines = Object.entries(formula?.blend ?? {}).map(
    ([oil, share]) => `${library.oils.get(oil)?.name ?? oil} ${Number(share.toFixed(2))} %`,
  )
  const pasting = { text: lines.join('\n'), name: formula?.name ?? 'My formula', only: false }
  return { ...work, pasting }
}

/** The work with what is typed changed. */
export function withPasted(work: Work, change: Partial<Pasting>): Work {
  if (!work.pasting) return work
  const pasting = { ...work.pasting, ...change }
  return { ...work, pasting: { ...pasting, text: pasting.text.slice(0, LONGEST_TEXT) } }
}

/** The work with what was typed put away; with a formula, that goes to the shelf. */
export function withPastingEnded(work: Work, formula?: Formula): Work {
  const { pasting, brief } = work
  const taken = formula ? withFormula(brief, formula, pasting?.only ?? false) : brief
  return { ...work, brief: taken, pasting: undefined }
}
