import { PERCENT, type Typed } from './typed-field'

/** Spaces and apostrophes that people group thousands with. */
const GROUPING = /(?<=\d)[\s\u2009\u202f'’](?=\d{3}(?!\d))/gu

/** A comma before three figures can part thousands or decimals: 1,250 is 1250 to some and 1.25 to others. */
export const TWO_WAYS = /(?<![\d.,])[1-9]\d{0,2}(,\d{3})+(?![\d.])/u

/** A text without spaces around it and between thousands, its figures and signs the usual ones. */
export function tidied(text: string): string {
  return text
    .replace(/(?<=\d)(?=[½¼¾⅓⅔⅛])/gu, ' ')
    .normalize('NFKC')
    .trim()
    .replace(GROUPING, '')
    .replaceAll('−', '-')
}

/** Reads a plain number at once; anything else comes back as `invalid` with its text tidied. */
export function readPlain(
  text: string,
  unit?: string,
):
  | Exclude<Typed, { status: 'invalid' | 'ends' }>
  | { readonly status: 'invalid'; readonly text: string } {
  const tidy = tidied(unit === PERCENT ? text.replace(/%\s*$/u, '') : text)
  if (tidy === '') return { status: 'empty' }
  if (TWO_WAYS.test(tidy)) return { status: 'invalid', text: tidy }
  const pointed = withoutGroups(/^-?\d+,\d+$/u.test(tidy) ? tidy.replace(',', '.') : tidy)
  const value = Number(pointed)
  if (/^[-+]?(\d+\.?\d*|\.\d+)$/u.test(pointed) && Number.isFinite(value))
    return { status: 'number', value }
  return { status: 'invalid', text: tidy }
}

/** Where both point and comma stand, the last of them is the decimal one. */
function withoutGroups(figures: string): string {
  if (/^-?\d{1,3}(?:,\d{3})+\.\d+$/u.test(figures)) return figures.replaceAll(',', '')
  if (/^-?\d{1,3}(?:\.\d{3})+,\d+$/u.test(figures))
    return figures.replaceAll('.', '').replace(',', '.')
  return figures
}

/** What to do about a comma that can be read two ways. */
export function twoWaysMessage(text: string): string {
  const whole = text.replaceAll(',', '')
  const decimal = Number(text.replace(',', '.'))
  const ways = Number.isNaN(decimal) ? whole : `${whole} or ${decimal}`
  return `${text} can be read two ways. Write ${ways}`
}
