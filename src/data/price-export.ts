import { dsvFormat } from 'd3'
import { amountFrom, minorDigits } from '../domain/cost/money'
import type { MaterialOf, PriceBook } from '../domain/cost/offer'
import { BYTE_ORDER_MARK, guarded } from './csv'
import { FIELD_NAMES, type PriceField } from './price-fields'

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
