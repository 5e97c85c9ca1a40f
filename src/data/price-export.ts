import { dsvFormat } from 'd3'
import { amountFrom, minorDigits } from '../domain/cost/money'
import type { MaterialOf, PriceBook } from '../domain/cost/offer'
import { FIELD_NAMES, type PriceField } from './price-fields'

/** Text that starts with one of these would be run as a formula by a spreadsheet. */
const RUNS_AS_FORMULA = /^'*[=+\-@\t\r]/u

/** Tells spreadsheets that the file is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF'

const FIELDS: readonly PriceField[] = [
  'id',
  'material',
  'supplier',
  'size',
  'unit',
  'fromPacks',
  'price',
  'currency',
  'taxPercent',
  'taxIncluded',
  'freight',
  'on',
]

/** Text that no spreadsheet runs: an apostrophe goes before what would be, and `unguarded` takes it away. */
export function guarded(text: string): string {
  return RUNS_AS_FORMULA.test(text) ? `'${text}` : text
}

/** Text as it was before it was guarded. */
export function unguarded(text: string): string {
  return text.startsWith("'") && RUNS_AS_FORMULA.test(text.slice(1)) ? text.slice(1) : text
}

/**
 * All prices of a book as comma-separated values (RFC 4180), a row for each step, with plain decimal points.
 * Reading them again gives the same offers.
 */
export function priceListOf(book: PriceBook, materialOf: MaterialOf): string {
  const rows = book.offers.flatMap((offer) => {
    const money = offer.currency ?? book.currency
    const written = (minor: number) => amountFrom(minor, money).toFixed(minorDigits(money))
    return offer.steps.map(({ fromPacks, priceMinor }): Record<PriceField, string> => ({
      id: offer.material,
      material: materialOf(offer.material)?.name ?? offer.material,
      supplier: offer.supplier,
      size: String(offer.size),
      unit: offer.unit,
      fromPacks: String(fromPacks),
      price: written(priceMinor),
      currency: money,
      taxPercent: offer.tax ? String(offer.tax.percent) : '',
      taxIncluded: offer.tax ? (offer.tax.included ? 'yes' : 'no') : '',
      freight: offer.freightMinor === undefined ? '' : written(offer.freightMinor),
      on: offer.on,
    }))
  })
  const table = [
    FIELDS.map((field) => FIELD_NAMES[field]),
    ...rows.map((row) => FIELDS.map((field) => guarded(row[field]))),
  ]
  return `${BYTE_ORDER_MARK}${dsvFormat(',').formatRows(table)}\n`
}
