import { isDay } from '../domain/batch/order/dates'
import type { OfferUnit } from '../domain/cost/offer'

/** What stands in a cell, or why it can't be used. */
export type Cell<T> =
  | { readonly status: 'read'; readonly value: T }
  | { readonly status: 'unread'; readonly reason: string }

/** How a file writes its numbers and days, where cells by themselves could be read two ways. */
export interface Conventions {
  readonly decimal: 'point' | 'comma' | 'unknown'
  readonly dayFirst: boolean | 'unknown'
}

/** Spaces and apostrophes that part thousands. */
const GROUPING = /(?<=\d)[\s\u00a0\u2009\u202f'’](?=\d{3}(?!\d))/gu

/** Signs and letters of a currency around a price. */
const MONEY_SIGNS =
  /^[\p{Sc}\s]*(?:[A-Za-z]{1,3}[.$]?\s*)?\p{Sc}?\s*|\s*\p{Sc}?\s*[A-Za-z]{0,3}\s*$/gu

/** Which decimal sign a cell shows beyond doubt; undefined where it shows none. */
export function decimalShown(text: string): 'point' | 'comma' | undefined {
  const figures = bare(text)
  if (/^\d{1,3}(?:\.\d{3})+,\d+$|^\d+,(?:\d{1,2}|\d{4,})$|^0,\d+$/u.test(figures)) return 'comma'
  if (/^\d{1,3}(?:,\d{3})+\.\d+$|^\d+\.(?:\d{1,2}|\d{4,})$|^0\.\d+$/u.test(figures)) return 'point'
  if (/^\d{1,3}(?:,\d{3}){2,}$/u.test(figures)) return 'point'
  return /^\d{1,3}(?:\.\d{3}){2,}$/u.test(figures) ? 'comma' : undefined
}

/** Reads a number of 0 or more, with or without a currency, thousands parted in any usual way. */
export function readNumber(text: string, { decimal }: Conventions): Cell<number> {
  const figures = bare(text)
  if (figures === '') return unread('is empty')
  const shown = decimalShown(text) ?? decimal
  const twofold = /^[1-9]\d{0,2}[.,]\d{3}$/u.test(figures)
  if (twofold && shown === 'unknown')
    return unread('can be read two ways. Say whether a comma or a point parts decimals')
  const pointed =
    shown === 'comma' ? figures.replaceAll('.', '').replace(',', '.') : figures.replaceAll(',', '')
  const value = Number(pointed)
  if (!/^(?:\d+\.?\d*|\.\d+)$/u.test(pointed) || !Number.isFinite(value))
    return unread(/^[-−]/u.test(figures) ? 'is below zero' : 'is no number')
  return { status: 'read', value }
}

function bare(text: string): string {
  return text.trim().replace(MONEY_SIGNS, '').trim().replace(GROUPING, '').replace(/%$/u, '').trim()
}

const UNITS: readonly (readonly [RegExp, OfferUnit, number])[] = [
  [/^(?:kg|kgs|kilo|kilos|kilograms?|kilogrammes?)$/u, 'kg', 1],
  [/^(?:g|gr|gm|grams?|grammes?)$/u, 'g', 1],
  [/^(?:oz|ounces?)$/u, 'oz', 1],
  [/^(?:lb|lbs|pounds?)$/u, 'lb', 1],
  [/^(?:l|lt|ltr|lit(?:re|er)s?)$/u, 'l', 1],
  [/^(?:ml|millilit(?:re|er)s?)$/u, 'ml', 1],
  [/^(?:cl|centilit(?:re|er)s?)$/u, 'ml', 10],
  [/^(?:pcs?|pieces?|each|ea|units?|st|stk|pi[eè]ces?)$/u, 'piece', 1],
]

/** What a pack holds. */
export interface PackSize {
  readonly size: number
  readonly unit: OfferUnit
}

/**
 * Reads "5 kg", "12 x 500 ml" or "5" with its unit in another cell. Litres are those of the metre; fluid
 * ounces and gallons differ by country and are not taken.
 */
export function readSize(text: string, unitText: string, conventions: Conventions): Cell<PackSize> {
  const match =
    /^(?:(\d+)\s*[x×*]\s*)?([\d.,\s'’\u00a0\u2009\u202f]+?)\s*(\p{L}[\p{L}. ]*)?$/u.exec(
      text.trim(),
    )
  if (!match) return unread(text.trim() === '' ? 'is empty' : 'is no size of a pack')
  const [, times = '1', figures = '', own = ''] = match
  const number = readNumber(figures, conventions)
  if (number.status === 'unread') return number
  const word = (own.trim() === '' ? unitText : own).trim().toLowerCase().replace(/\.$/u, '')
  const unit = UNITS.find(([words]) => words.test(word))
  if (!unit)
    return unread(
      word === '' ? 'has no unit' : `has the unit “${word}”; use g, kg, oz, lb, ml, l or piece`,
    )
  const size = Number(times) * number.value * unit[2]
  if (!(size > 0)) return unread('is not above 0')
  return { status: 'read', value: { size, unit: unit[1] } }
}

const DAY_PARTS = /^(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})$/u

/** Whether a cell shows beyond doubt that the day goes before the month. */
export function dayFirstShown(text: string): boolean | undefined {
  const [, first = '', second = ''] = DAY_PARTS.exec(text.trim()) ?? []
  if (first.length > 2 || first === '') return undefined
  if (text.includes('.')) return true
  if (Number(first) > MONTHS) return true
  return Number(second) > MONTHS ? false : undefined
}

const MONTHS = 12
const CENTURY = 2000

/** Reads a day as YYYY-MM-DD, from that form or from one with the year last. */
export function readDay(text: string, { dayFirst }: Conventions): Cell<string> {
  const [, first = '', second = '', third = ''] =
    DAY_PARTS.exec(text.trim().slice(0, 'YYYY-MM-DD'.length)) ?? []
  if (first === '') return unread('is no day; write it as 2026-11-25')
  if (first.length === 4) return dayOf(first, second, third)
  const order = dayFirstShown(text) ?? dayFirst
  const same = first === second
  if (order === 'unknown' && !same)
    return unread('can be read two ways. Say whether the day or the month comes first')
  const year = third.length === 2 ? String(CENTURY + Number(third)) : third
  return order === false ? dayOf(year, first, second) : dayOf(year, second, first)
}

function dayOf(year: string, month: string, day: string): Cell<string> {
  const text = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
  return isDay(text) ? { status: 'read', value: text } : unread('is no day of the calendar')
}

/** Reads yes or no; an empty cell as `empty`. */
export function readYes(text: string, empty: boolean): Cell<boolean> {
  const word = text.trim().toLowerCase()
  if (word === '') return { status: 'read', value: empty }
  if (/^(?:y|yes|true|1|x|in|incl|incl\.|included|gross|ja|oui)$/u.test(word))
    return { status: 'read', value: true }
  if (/^(?:n|no|false|0|out|excl|excl\.|excluded|net|nein|non)$/u.test(word))
    return { status: 'read', value: false }
  return unread('is neither yes nor no')
}

/** A reason goes behind the cell's own text: “1,250” can be read two ways. */
function unread(reason: string): { readonly status: 'unread'; readonly reason: string } {
  return { status: 'unread', reason }
}
