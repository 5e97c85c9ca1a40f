/** What a column of a price list can hold. */
export type PriceField =
  | 'id'
  | 'material'
  | 'supplier'
  | 'size'
  | 'unit'
  | 'fromPacks'
  | 'price'
  | 'currency'
  | 'taxPercent'
  | 'taxIncluded'
  | 'freight'
  | 'on'

/** The names of columns in an exported list; also what the page calls them. */
export const FIELD_NAMES: Readonly<Record<PriceField, string>> = {
  id: 'Id',
  material: 'Material',
  supplier: 'Supplier',
  size: 'Pack size',
  unit: 'Unit',
  fromPacks: 'From packs',
  price: 'Price of a pack',
  currency: 'Currency',
  taxPercent: 'Tax %',
  taxIncluded: 'Tax included',
  freight: 'Freight share',
  on: 'Date',
}

/** The columns of a list: what each holds, or nothing. */
export type PriceColumns = readonly (PriceField | null)[]
