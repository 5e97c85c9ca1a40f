/** What a person typed into a number field. */
export type Typed =
  | { readonly status: 'empty' }
  | { readonly status: 'number'; readonly value: number }
  | { readonly status: 'invalid'; readonly message: string }

/** Spaces and apostrophes that people group thousands with. */
const GROUPING = /(?<=\d)[\s\u2009\u202f'](?=\d{3})/gu

/**
 * Reads a plain number with a decimal point or comma, or a quantity with a unit or a sum to work out
 * ("1.5 kg", "2 * 450 g", "1 lb 4 oz"), as a number of `unit`. Units need mathjs, which is loaded when
 * the first one is typed.
 */
export async function readTyped(text: string, unit: string | undefined): Promise<Typed> {
  const plain = readPlain(text)
  if (plain.status !== 'invalid') return plain
  const { readQuantity } = await import('./typed-quantity')
  return readQuantity(plain.text, unit)
}

/** Reads a plain number at once; anything else comes back as `invalid` with its text tidied. */
export function readPlain(
  text: string,
): Exclude<Typed, { status: 'invalid' }> | { status: 'invalid'; text: string } {
  const tidy = text.trim().replace(GROUPING, '').replaceAll('−', '-')
  if (tidy === '') return { status: 'empty' }
  const pointed = /^-?\d+,\d+$/u.test(tidy) ? tidy.replace(',', '.') : tidy
  const value = Number(pointed)
  if (/^[-+]?(\d+\.?\d*|\.\d+)$/u.test(pointed) && Number.isFinite(value))
    return { status: 'number', value }
  return { status: 'invalid', text: tidy }
}
