import { library } from '../../../state/library'
import type { Blend } from '../../../domain/blend/blend'
import type { NoResult } from '../../../domain/optimise/studies/question'
import type { LabelChange } from '../../../domain/replace/batch-change'
import { lowerFirst } from '../../bench/words'
import { blendInWords, money } from '../../words/format'

/** The short name of an oil inside a sentence. */
export function oilWord(oil: string): string {
  return lowerFirst(library.oils.get(oil)?.shortName ?? oil)
}

export function blendWords(blend: Blend): string {
  return blendInWords(blend, library.oils)
}

/** Money with its sign, as a difference: "+€0.08". */
export function moneyChange(value: number, currency: string): string {
  const text = money(value, currency)
  return Number(value.toFixed(2)) > 0 ? `+${text}` : text
}

/** What changes on the label, in a sentence. */
export function labelWords({ gone, added, reordered }: LabelChange): string {
  const parts = [
    ...(gone.length > 0 ? [`out: ${gone.join(', ')}`] : []),
    ...(added.length > 0 ? [`in: ${added.join(', ')}`] : []),
    ...(reordered ? ['the order changes'] : []),
  ]
  return parts.length === 0 ? 'no change' : parts.join('; ')
}

/** Why there is nothing to show. */
export function noneWords(reason: NoResult): string {
  return reason.kind === 'undecided'
    ? 'The rules of the brief leave so little that nothing was found in time. Loosen one.'
    : 'No oil has room to take its place: widen limits of the shelf, or look in the whole library.'
}

/** Limits that clash, for a brief without a blend. */
export const NO_BLEND =
  'No blend keeps the brief, so there is nothing to reckon. Settle the brief first.'

/** A search under rules that was not settled in time. */
export const UNDECIDED =
  'Under the rules of the brief a search was not settled in time. Loosen a rule.'
