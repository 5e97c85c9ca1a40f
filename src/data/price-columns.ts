import { wordsOf } from './name-words'
import type { PriceColumns, PriceField } from './price-fields'

/** Words that other lists head their columns with, as `wordsOf` leaves them. */
const HEADINGS: Readonly<Record<PriceField, readonly string[]>> = {
  id: ['id', 'material id'],
  material: [
    'material',
    'oil',
    'product',
    'item',
    'name',
    'ingredient',
    'article',
    'description',
    'what',
  ],
  supplier: ['supplier', 'vendor', 'seller', 'shop', 'from whom', 'source', 'bought from'],
  size: [
    'pack size',
    'size',
    'pack',
    'quantity',
    'amount',
    'weight',
    'content',
    'volume',
    'packaging',
  ],
  unit: ['unit', 'uom', 'pack unit', 'measure'],
  fromPacks: [
    'from pack',
    'from',
    'min qty',
    'minimum order',
    'moq',
    'min order',
    'minimum',
    'at least',
  ],
  price: [
    'price of a pack',
    'price',
    'cost',
    'unit price',
    'pack price',
    'net price',
    'gross price',
    'amount due',
  ],
  currency: ['currency', 'ccy', 'cur'],
  taxPercent: ['tax', 'vat', 'tax rate', 'vat rate', 'sale tax', 'gst'],
  taxIncluded: ['tax included', 'vat included', 'incl tax', 'incl vat', 'with tax', 'gross net'],
  freight: ['freight share', 'freight', 'shipping', 'postage', 'delivery', 'carriage'],
  on: ['date', 'on', 'day', 'price date', 'seen', 'valid from', 'as of'],
}

/** The columns that a list can't do without. */
export const NEEDED_FIELDS: readonly PriceField[] = ['material', 'size', 'price']

/** Headings recognised before a row counts as one of headings. */
const LEAST_HEADINGS = 2

/** What the cells of a row head, or undefined where it is no row of headings. */
export function columnsOf(row: readonly string[]): PriceColumns | undefined {
  const taken = new Set<PriceField>()
  const columns = row.map((cell) => {
    const field = fieldOf(cell)
    if (field === null || taken.has(field)) return null
    taken.add(field)
    return field
  })
  return taken.size >= LEAST_HEADINGS ? columns : undefined
}

function fieldOf(cell: string): PriceField | null {
  const plain = wordsOf(cell.replace(/\(.*?\)|\[.*?\]/gu, ' ')).join(' ')
  const found = Object.entries(HEADINGS).find(([, words]) => words.includes(plain))
  return (found?.[0] as PriceField | undefined) ?? null
}

/** The needed columns that are missing. */
export function missingFields(columns: PriceColumns): readonly PriceField[] {
  return NEEDED_FIELDS.filter((field) => !columns.includes(field))
}
