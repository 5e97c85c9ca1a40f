import { gramsFrom, type MassUnit } from '../domain/units'
import { noWeight, UNIT_WORDS, unitMeant } from './mass-words'
import { readPlain } from './plain-number'
import { PERCENT } from './typed-field'

/** An amount of an oil as a formula states it. */
export type Amount =
  | { readonly kind: 'bare'; readonly value: number }
  | { readonly kind: 'percent'; readonly value: number }
  | { readonly kind: 'mass'; readonly value: number; readonly unit: MassUnit }

/** A piece of an entry: an amount, words, or figures that are no amount, with the reason. */
export type Piece =
  | { readonly kind: 'amount'; readonly text: string; readonly amount: Amount }
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'wrong'; readonly text: string; readonly reason: string }

/** A fraction counts only with a unit: 60/40 is no fraction. */
const FRACTION = `(?:\\d+ )?\\d+[/⁄]\\d+(?= ?(?:${UNIT_WORDS})(?!\\p{L}))`
const FIGURES = '\\d[\\d.,]*\\d|\\d|[.,]\\d+'

/** A minus stands right before its figure, and after no letter: “olive-60” is a dash. */
const AMOUNT = new RegExp(
  `(?<![\\d.,])(?<minus>(?<!\\p{L})[-−])?(?<figures>${FRACTION}|${FIGURES})` +
    `(?:[ \\t]?(?<unit>${UNIT_WORDS})(?!\\p{L}))?`,
  'giu',
)

/** Figures that go on behind a dash in the same unit are a range; “60 % – 600 g” is not. */
const RANGE = /\d\s*(?:[-–—−]|\bto\b)\s*\d|%\s*(?:[-–—−]|\bto\b)\s*[\d.,]+\s*%/iu

/** Two figures parted by a plain space, the second of three digits: 1 250 or 1 and 250. */
const SPACED = /(?<![\d.,])\d{1,3}(?: \d{3})+(?![\d.,])/u

/** A point before three figures parts thousands to some: nobody weighs 1.200 g of oil to the milligram. */
const THOUSANDS = /^[1-9]\d{0,2}\.\d{3}$/u

/** More than any batch; a slip of the hand. */
const LARGEST = 1e9

/** The amounts and words of one entry, in order; pieces that can't be read carry their reason. */
export function piecesOf(entry: string): Piece[] {
  const range = RANGE.exec(entry)?.[0]
  if (range !== undefined) return [wrong(entry, 'Two ends of a range stand here. Give one figure')]
  const spaced = SPACED.exec(entry)?.[0]
  if (spaced !== undefined)
    return [
      wrong(entry, `${spaced} can be read two ways. Write it without the space, or with a tab`),
    ]
  const pieces: Piece[] = []
  let end = 0
  for (const match of entry.matchAll(AMOUNT)) {
    pieces.push({ kind: 'words', text: entry.slice(end, match.index) }, amountPiece(match))
    end = match.index + match[0].length
  }
  pieces.push({ kind: 'words', text: entry.slice(end) })
  return pieces.filter(({ kind, text }) => kind !== 'words' || /[\p{L}\p{N}]/u.test(text))
}

/** Grams of a mass; undefined for other amounts. */
export function gramsOf(amount: Amount): number | undefined {
  return amount.kind === 'mass' ? gramsFrom(amount.value, amount.unit) : undefined
}

function amountPiece(match: RegExpExecArray): Piece {
  const text = match[0].trim()
  const { minus, figures = '', unit = '' } = match.groups ?? {}
  const named = unit.toLowerCase()
  const kind = named === '' ? 'bare' : unitMeant(named)
  if (minus !== undefined)
    return wrong(
      text,
      `${text} is below zero. Where the dash only parts name and figure, put a space after it`,
    )
  if (kind === undefined || kind === 'volume') return wrong(text, noWeight(named))
  if (kind === 'g' && THOUSANDS.test(figures))
    return wrong(
      text,
      `${text} can be read two ways. Write ${figures.replace('.', '')} g or ${Number(figures)} g`,
    )
  const value = valueOf(figures, kind === 'percent')
  if (typeof value === 'string') return wrong(text, value)
  if (value > LARGEST) return wrong(text, `${text} is too large. Give at most ${LARGEST}`)
  if (kind === 'bare' || kind === 'percent')
    return { kind: 'amount', text, amount: { kind, value } }
  return { kind: 'amount', text, amount: { kind: 'mass', value, unit: kind } }
}

/** The number, or why it is none. */
function valueOf(figures: string, isPercent: boolean): number | string {
  const fraction = /^(?:(\d+) )?(\d+)[/⁄](\d+)$/u.exec(figures)
  if (fraction) {
    const [, whole = '0', above = '0', below = '1'] = fraction
    const value = Number(whole) + Number(above) / Number(below)
    return Number.isFinite(value) ? value : `${figures} is no number`
  }
  const plain = readPlain(isPercent ? figures.replace(',', '.') : figures, PERCENT)
  if (plain.status === 'number') return plain.value
  if (/^[1-9]\d{0,2}(?:,\d{3})+$/u.test(figures))
    return `${figures} can be read two ways. Write it without the comma, or with a point`
  return `${figures} is no number`
}

function wrong(text: string, reason: string): Piece {
  return { kind: 'wrong', text, reason }
}
