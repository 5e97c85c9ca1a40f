import type { Oil } from '../domain/blend/oil'

/** Around the code of an oil whose name has a comma or figures in it, while the text is taken apart. */
const MASK_START = '\uE000'
const MASK_END = '\uE001'

/** Fractions of one sign, which would otherwise run into the figure before them. */
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
}

/**
 * Cuts the text of a formula into entries: at lines, semicolons, “and”, and commas that are no decimal
 * ones. Names that hold a comma themselves stay whole, see `unmasked`. Marks of lists and HTML are taken off.
 */
export function entriesOf(text: string, oils: Iterable<Oil>): string[] {
  const masked = [...oils]
    .filter(({ name }) => name.includes(','))
    .reduce(
      (rest, { name, code }) => rest.replaceAll(anyCase(name), MASK_START + code + MASK_END),
      tidy(text),
    )
  return masked
    .split(/[\n;|]|,(?!\d)|(?<!\d),| (?:and|&|\+) /iu)
    .map(withoutListMark)
    .filter((entry) => entry !== '')
}

/** An entry as it stood in the text. */
export function unmasked(entry: string, oils: Iterable<Oil>): string {
  const names = new Map([...oils].map(({ code, name }) => [code, name]))
  return entry.replace(/\uE000([a-z]+)\uE001/giu, (_, code: string) => names.get(code) ?? code)
}

function tidy(text: string): string {
  return text
    .replace(/<\/?[a-z][^<>]*>/giu, ' ')
    .replace(/(\d?)([½¼¾⅓⅔⅛])/gu, (_, before: string, sign: string) =>
      `${before} ${VULGAR[sign] ?? ''}`.trim(),
    )
    .replace(/(?<=\d)[\u2009\u202f\u00a0'’](?=\d{3}(?!\d))/gu, '')
    .replace(/[\uE000-\uF8FF]/gu, ' ')
    .normalize('NFKC')
    .replace(/\r\n?|[\u2028\u2029\v\f]/gu, '\n')
    .replace(/[^\S\n\t]+/gu, ' ')
}

/** Takes off “•”, “- ” and “3. ” where more than the mark stands there. */
function withoutListMark(entry: string): string {
  return entry
    .trim()
    .replace(/^(?:[-–—](?=[\s\p{L}])|[•*·▪◦‣>✓☐])+\s*/u, '')
    .replace(/^\d{1,2}[.)]\s+(?=\D*\d)/u, '')
    .trim()
}

function anyCase(name: string): RegExp {
  return new RegExp(name.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&'), 'giu')
}
