import { type Library, measureOf, oilOf } from '../../blend/library'
import type { Brief } from '../brief/brief'
import type { Limit } from '../brief/limits'
import { figure } from '../../number-text'
import { asTyped, decimalsOf, inward, MONEY_DECIMALS, percent, type Words } from './words'

/** What sentences about limits draw on. */
export interface Speech {
  readonly brief: Brief
  readonly library: Library
  readonly words: Words
}

/** Decimals of a value of a measure or a share in a sentence. */
const VALUE_DECIMALS = 1

/** A limit in words, such as "Hardness at least 38", at its own value or another. */
export function limitInWords(speech: Speech, limit: Limit, value = limit.value): string {
  const side = limit.side === 'min' ? 'least' : 'most'
  return `${nameOf(speech, limit)} at ${side} ${valueInWords(speech, limit, value)}`
}

/** A value of a limit as typed, with its unit: "38", "30 %", "5.60 per kg". */
export function valueInWords({ library, words }: Speech, limit: Limit, value: number): string {
  if (limit.kind !== 'measure') return percent(asTyped(value))
  if (isPoints(library, limit.subject)) return asTyped(value)
  return `${words.money(value, decimalsOf(value, MONEY_DECIMALS))} per kg`
}

/** The end of a stretch of a limit that begins at its value, rounded so that it lies within. */
export function endInWords({ library, words }: Speech, limit: Limit, end: number): string {
  if (limit.kind === 'measure' && !isPoints(library, limit.subject)) {
    const { value, decimals } = inward(end, limit.value, MONEY_DECIMALS)
    return `${words.money(value, decimals)} per kg`
  }
  const { value, decimals } = inward(end, limit.value, VALUE_DECIMALS)
  const text = Number.isInteger(end) ? asTyped(end) : figure(value, decimals)
  return limit.kind === 'measure' ? text : percent(text)
}

/** One unit of a limit: "point", "percentage point", or "1.00 per kg" of money. */
export function unitInWords({ library, words }: Speech, limit: Limit): string {
  if (limit.kind !== 'measure') return 'percentage point'
  return isPoints(library, limit.subject) ? 'point' : `${words.money(1, MONEY_DECIMALS)} per kg`
}

/** Whether a measure is told in points; else it is money per kg. */
export function isPoints(library: Library, measure: string): boolean {
  return measureOf(library, measure).unit === 'points'
}

function nameOf({ brief, library }: Speech, { kind, subject }: Limit): string {
  if (kind === 'oil') return oilOf(library, subject).shortName
  if (kind === 'measure') return measureOf(library, subject).name
  return brief.groups[Number(subject)]?.name ?? subject
}
