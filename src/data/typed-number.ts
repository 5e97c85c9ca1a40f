import { noWeight, UNIT_WORDS, unitMeant } from './mass-words'
import { packPrice, perKg } from './pack-price'
import { readPlain, tidied, TWO_WAYS, twoWaysMessage } from './plain-number'
import { type TypedEnds, typedEnds } from './typed-ends'
import { PERCENT, said, type Typed, type TypedField } from './typed-field'
import { unsigned } from './typed-signs'

/**
 * Reads what stands in a field: a figure with comma or point, with its own sign or unit, a fraction, a sum
 * with + and ×, and where the field takes them a price of a pack or both ends of a wish. Sums and units
 * need mathjs, which is loaded when the first one is typed.
 */
export async function readTyped(text: string, field: TypedField = {}): Promise<Typed> {
  const typed = readAtOnce(text, field)
  if (typed.status !== 'sum') return typed
  const { readQuantity } = await import('./typed-quantity')
  return readQuantity(typed.text, field.unit === PERCENT ? undefined : field.unit)
}

/** The same without sums and units, which come back tidied as `sum`. */
export function readAtOnce(
  text: string,
  field: TypedField = {},
): Typed | { readonly status: 'sum'; readonly text: string } {
  const tidy = tidied(text)
  const pack = field.currency === undefined ? undefined : packPrice(tidy)
  const bare = unsigned(pack?.price ?? tidy, field)
  if ('message' in bare) return { status: 'invalid', message: bare.message }
  const ends = typedEnds(bare.text)
  if (ends && !pack) return field.ends ? bothEnds(ends, field.ends.about) : oneFigure(ends)
  const figure = withFractions(bare.text)
  const plain = readPlain(figure)
  if (plain.status === 'empty') return tidy === '' ? plain : invalid(field)
  if (plain.status === 'invalid') return pack ? invalid(field) : later(plain.text, field)
  if (pack) return field.perKg ? perKg(plain.value, pack, field) : NO_PACK
  return {
    status: 'number',
    value: plain.value,
    ...wordsFor(plain.value, tidy, bare.dropped, field),
  }
}

const NO_PACK: Typed = {
  status: 'invalid',
  message: 'Not a number. A price of a pack belongs where a price per kg is asked for',
}

/** Fractions that people write, as decimals: 1/2 and 1 1/2, but not 60/40. */
function withFractions(text: string): string {
  return text.replace(
    /^(?:(\d+) )?(\d{1,2})[/⁄](\d{1,2})(?![\d.,/])/u,
    (all, whole: string | undefined, above: string, below: string) =>
      Number(above) < Number(below)
        ? String(Number(whole ?? 0) + Number(above) / Number(below))
        : all,
  )
}

/** What is not to be worked out has its reason; the rest is a sum or a quantity. */
function later(text: string, field: TypedField) {
  const twofold = TWO_WAYS.exec(text)?.[0]
  if (twofold !== undefined) return { status: 'invalid', message: twoWaysMessage(twofold) } as const
  const volume = VOLUME.exec(text)?.[1]
  const weighs = field.unit !== undefined && !['%', 'ml', 'cl', 'l'].includes(field.unit)
  if (weighs && volume !== undefined && !text.includes('/') && unitMeant(volume) === 'volume')
    return { status: 'invalid', message: noWeight(volume) } as const
  if (/\d\s*\p{L}*\s*[-–—]\s*\d/u.test(text)) return MINUS
  return { status: 'sum', text } as const
}

const VOLUME = new RegExp(`\\d\\s*(${UNIT_WORDS})(?!\\p{L})`, 'iu')

const MINUS: Typed = {
  status: 'invalid',
  message: 'Not a number. A minus between two figures is a range, not a sum: type one figure',
}

function invalid({ unit, currency }: TypedField): Typed {
  const example = unit !== undefined && unit !== PERCENT ? `5.5 or 5.5 ${unit}` : '5.5'
  return {
    status: 'invalid',
    message: `Not a number. Try ${currency === undefined ? example : '5.50'}`,
  }
}

/** Words for a figure that was typed with more than itself. */
function wordsFor(
  value: number,
  typed: string,
  dropped: string | undefined,
  { unit, currency, perKg: price }: TypedField,
): { understood?: string } {
  if (dropped === undefined && /^[-+]?[\d.]+$/u.test(typed)) return {}
  const of = currency === undefined ? (unit ?? '') : `${currency}${price ? ' per kg' : ''}`
  const figure = currency === undefined ? said(value) : value.toFixed(2)
  const without = dropped === undefined ? '' : `, without “${dropped}”`
  return { understood: `${figure} ${of}`.trim() + without }
}

function bothEnds(ends: TypedEnds, about: number): Typed {
  if (ends.kind === 'least')
    return { status: 'ends', min: ends.value, understood: `at least ${said(ends.value)}` }
  if (ends.kind === 'most')
    return { status: 'ends', max: ends.value, understood: `at most ${said(ends.value)}` }
  const [min, max] =
    ends.kind === 'range' ? [ends.min, ends.max] : [ends.value - about, ends.value + about]
  const tie = ends.kind === 'about' ? ', within a tie' : ''
  return { status: 'ends', min, max, understood: `${said(min)} to ${said(max)}${tie}` }
}

/** Where a field takes one figure: “about” is that figure, a range is asked about. */
function oneFigure(ends: TypedEnds): Typed {
  if (ends.kind === 'about')
    return {
      status: 'number',
      value: ends.value,
      understood: `${said(ends.value)}, without “about”`,
    }
  const asked =
    ends.kind === 'range' ? `${said(ends.min)} or ${said(ends.max)}?` : `${said(ends.value)}?`
  return { status: 'invalid', message: `One figure here. ${asked}` }
}
