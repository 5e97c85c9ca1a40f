/** What a person typed into a number field. */
export type Typed =
  | { readonly status: 'empty' }
  | { readonly status: 'number'; readonly value: number }
  | { readonly status: 'invalid'; readonly message: string }

/** Unit of fields that hold shares. */
export const PERCENT = '%'

/** Spaces and apostrophes that people group thousands with. */
const GROUPING = /(?<=\d)[\s\u2009\u202f'](?=\d{3}(?!\d))/gu

/** A comma before three figures can part thousands or decimals: 1,250 is 1250 to some and 1.25 to others. */
const TWO_WAYS = /(?<![\d.,])[1-9]\d{0,2}(,\d{3})+(?!\d)/u

/**
 * Reads a plain number with a decimal point or comma, or a quantity with a unit or a sum to work out
 * ("1.5 kg", "2 * 450 g", "1 lb 4 oz"), as a number of `unit`. Units need mathjs, which is loaded when
 * the first one is typed. A field in percent takes its sign too.
 */
export async function readTyped(text: string, unit: string | undefined): Promise<Typed> {
  const plain = readPlain(text, unit)
  if (plain.status !== 'invalid') return plain
  const twofold = TWO_WAYS.exec(plain.text)?.[0]
  if (twofold !== undefined) return { status: 'invalid', message: twoWaysMessage(twofold) }
  const { readQuantity } = await import('./typed-quantity')
  return readQuantity(plain.text, unit === PERCENT ? undefined : unit)
}

/** Reads a plain number at once; anything else comes back as `invalid` with its text tidied. */
export function readPlain(
  text: string,
  unit?: string,
): Exclude<Typed, { status: 'invalid' }> | { status: 'invalid'; text: string } {
  const bare = unit === PERCENT ? text.replace(/%\s*$/u, '') : text
  const tidy = bare.trim().replace(GROUPING, '').replaceAll('−', '-')
  if (tidy === '') return { status: 'empty' }
  if (TWO_WAYS.test(tidy)) return { status: 'invalid', text: tidy }
  const pointed = /^-?\d+,\d+$/u.test(tidy) ? tidy.replace(',', '.') : tidy
  const value = Number(pointed)
  if (/^[-+]?(\d+\.?\d*|\.\d+)$/u.test(pointed) && Number.isFinite(value))
    return { status: 'number', value }
  return { status: 'invalid', text: tidy }
}

function twoWaysMessage(text: string): string {
  const whole = text.replaceAll(',', '')
  const decimal = Number(text.replace(',', '.'))
  const ways = Number.isNaN(decimal) ? whole : `${whole} or ${decimal}`
  return `${text} can be read two ways. Write ${ways}`
}
