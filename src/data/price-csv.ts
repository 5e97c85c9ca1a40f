import { dsvFormat } from 'd3'
import { isCurrency, minorFrom } from '../domain/cost/money'
import type { Offer, OwnMaterial, PriceStep } from '../domain/cost/offer'
import { packOf } from '../domain/cost/price-age'
import {
  type Cell,
  type Conventions,
  dayFirstShown,
  decimalShown,
  readDay,
  readNumber,
  readSize,
  readYes,
} from './price-cells'
import { columnsOf, missingFields } from './price-columns'
import { FIELD_NAMES, type PriceColumns, type PriceField } from './price-fields'
import { findMaterial, ownId } from './price-materials'
import { unguarded } from './price-export'

/** What a person may say about a list that it doesn't say itself. */
export interface ImportChoices {
  /** Columns in place of those recognised. */
  readonly columns?: PriceColumns | undefined
  readonly decimal?: 'point' | 'comma' | undefined
  readonly dayFirst?: boolean | undefined
  /** Whether names that nobody knows become materials of the maker's own; pieces always do. */
  readonly takeUnknown?: boolean | undefined
}

/** What a list is read beside. */
export interface ImportSetting {
  readonly currency: string
  readonly materials: readonly OwnMaterial[]
  /** The day for rows without one, YYYY-MM-DD. */
  readonly today: string
  /** The supplier for rows without one. */
  readonly supplier?: string | undefined
}

/** A row that could not be used. */
export interface UnreadRow {
  /** Counted from 1, headings and all. */
  readonly row: number
  readonly text: string
  readonly reason: string
}

/** What a list came to. */
export interface PriceImport {
  readonly offers: readonly Offer[]
  /** Materials of the maker's own that the list brings. */
  readonly materials: readonly OwnMaterial[]
  /** Rows that are in the offers. */
  readonly readRows: number
  readonly unread: readonly UnreadRow[]
  /** What was taken for granted. */
  readonly notes: readonly string[]
  readonly columns: PriceColumns
  /** The first rows as they stand, to match columns by. */
  readonly preview: readonly (readonly string[])[]
  /** Needed columns that nobody matched; nothing is read then. */
  readonly lacking: readonly PriceField[]
}

const DELIMITERS = [',', ';', '\t', '|'] as const
const BYTE_ORDER_MARK = /^\uFEFF/u
const PREVIEW_ROWS = 5
/** Rows looked at for headings and for the sign that parts cells. */
const LOOKED_AT = 12
/** More rows than a maker's list has: reading a page of unknown names takes about 1 ms a row. */
const MOST_ROWS = 2000
/** Letters of a row that a report shows. */
const SHOWN_LETTERS = 90

/** Reads a list of prices, whatever parts its cells; every row is read or reported, none is dropped. */
export function readPriceList(
  text: string,
  setting: ImportSetting,
  choices: ImportChoices = {},
): PriceImport {
  const rows = rowsOf(text.replace(BYTE_ORDER_MARK, ''))
  const headed = rows.findIndex(({ cells }, at) => at < LOOKED_AT && columnsOf(cells))
  const found = headed < 0 ? undefined : columnsOf(rows[headed]?.cells ?? [])
  const columns = choices.columns ?? found ?? []
  const body = rows.slice(headed + 1, headed + 1 + MOST_ROWS)
  const lacking = missingFields(columns)
  const preview = rows.slice(0, PREVIEW_ROWS).map(({ cells }) => cells)
  const empty = { offers: [], materials: [], readRows: 0, notes: [], columns, preview }
  const before = rows
    .slice(0, Math.max(0, headed))
    .map((row) => unread(row, 'It stands above the headings'))
  if (lacking.length > 0) return { ...empty, unread: [], lacking }
  const reader = new RowReader(setting, choices, columns, conventionsOf(body, columns, choices))
  for (const row of body) reader.read(row)
  const over = rows
    .slice(headed + 1 + MOST_ROWS)
    .map((row) => unread(row, `A list is read up to ${MOST_ROWS} rows`))
  return {
    ...empty,
    ...reader.result(),
    unread: [...before, ...reader.unread, ...over],
    lacking,
  }
}

interface Row {
  readonly number: number
  readonly cells: readonly string[]
}

/** The rows that hold anything, parted by whichever sign gives the most recognised headings, then the most cells. */
function rowsOf(text: string): Row[] {
  const ways = DELIMITERS.map((delimiter) => {
    const rows = dsvFormat(delimiter).parseRows(text)
    const head = rows.slice(0, LOOKED_AT)
    const headings = Math.max(
      0,
      ...head.map((cells) => (columnsOf(cells) ?? []).filter((field) => field !== null).length),
    )
    const cells = Math.max(0, ...head.map(({ length }) => length))
    return { rows, headings, cells }
  })
  ways.sort((a, b) => b.headings - a.headings || b.cells - a.cells)
  return (ways[0]?.rows ?? [])
    .map((cells, at) => ({ number: at + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''))
}

function conventionsOf(
  rows: readonly Row[],
  columns: PriceColumns,
  choices: ImportChoices,
): Conventions {
  const cellsOf = (...fields: PriceField[]) =>
    rows.flatMap(({ cells }) =>
      cells.filter((_, at) => fields.some((field) => columns[at] === field)),
    )
  const signs = new Set(
    cellsOf('price', 'size', 'freight', 'taxPercent').map(numberPart).map(decimalShown),
  )
  signs.delete(undefined)
  const orders = new Set(cellsOf('on').map(dayFirstShown))
  orders.delete(undefined)
  const [sign, otherSign] = signs
  const [order, otherOrder] = orders
  return {
    decimal: choices.decimal ?? (otherSign === undefined ? sign : undefined) ?? 'unknown',
    dayFirst: choices.dayFirst ?? (otherOrder === undefined ? order : undefined) ?? 'unknown',
  }
}

/** A size's figures without its unit. */
function numberPart(text: string): string {
  return text.replace(/^\d+\s*[x×*]\s*/u, '').replace(/\s*\p{L}[\p{L}.]*$/u, '')
}

/** One price of one row, before rows of the same pack are put together. */
interface PricedRow {
  readonly offer: Omit<Offer, 'steps'>
  readonly step: PriceStep
  readonly row: Row
}

class RowReader {
  readonly unread: UnreadRow[] = []
  readonly #priced: PricedRow[] = []
  readonly #own: OwnMaterial[] = []
  readonly #notes = new Set<string>()

  constructor(
    private readonly setting: ImportSetting,
    private readonly choices: ImportChoices,
    private readonly columns: PriceColumns,
    private readonly conventions: Conventions,
  ) {}

  read(row: Row): void {
    const priced = this.#parse(row)
    if (typeof priced === 'string') this.unread.push(unread(row, priced))
    else this.#priced.push(priced)
  }

  /** Rows of the same pack and day become one offer with steps; a second price of one step is reported. */
  result(): Pick<PriceImport, 'offers' | 'materials' | 'readRows' | 'notes'> {
    const offers = new Map<string, Offer>()
    let readRows = 0
    for (const { offer, step, row } of this.#priced) {
      const key = `${packOf({ ...offer, steps: [] })}/${offer.on}`
      const before = offers.get(key)
      if (before?.steps.some(({ fromPacks }) => fromPacks === step.fromPacks)) {
        this.unread.push(unread(row, 'The same pack has a price for that day already'))
        continue
      }
      readRows++
      const steps = [...(before?.steps ?? []), step].sort((a, b) => a.fromPacks - b.fromPacks)
      offers.set(key, { ...(before ?? offer), steps })
    }
    return { offers: [...offers.values()], materials: this.#own, readRows, notes: [...this.#notes] }
  }

  #parse(row: Row): PricedRow | string {
    const size = readSize(this.#cell(row, 'size'), this.#cell(row, 'unit'), this.conventions)
    if (size.status === 'unread') return this.#wrong(row, 'size', size)
    const number = (field: PriceField, empty: number) => {
      const text = this.#cell(row, field)
      return text === ''
        ? ({ status: 'read', value: empty } as const)
        : readNumber(text, this.conventions)
    }
    const price = readNumber(this.#cell(row, 'price'), this.conventions)
    if (price.status === 'unread') return this.#wrong(row, 'price', price)
    const from = number('fromPacks', 1)
    if (from.status === 'unread') return this.#wrong(row, 'fromPacks', from)
    if (!Number.isSafeInteger(from.value) || from.value < 1)
      return this.#wrong(row, 'fromPacks', { reason: 'is no whole number of packs' })
    const freight = number('freight', 0)
    if (freight.status === 'unread') return this.#wrong(row, 'freight', freight)
    const tax = this.#tax(row)
    if (typeof tax === 'string') return tax
    const on = this.#day(row)
    if (on.status === 'unread') return this.#wrong(row, 'on', on)
    const money = this.#currency(row)
    if (money === undefined)
      return this.#wrong(row, 'currency', { reason: 'is no currency such as EUR' })
    const supplier = this.#cell(row, 'supplier') || this.setting.supplier
    if (supplier === undefined) return 'It names no supplier. Give one'
    const material = this.#material(row, size.value.unit === 'piece')
    if ('reason' in material) return material.reason
    return {
      offer: {
        id: `${material.id}/${supplier}/${size.value.size}${size.value.unit}/${on.value}`,
        material: material.id,
        supplier,
        ...size.value,
        ...(money === this.setting.currency ? {} : { currency: money }),
        ...(tax === undefined ? {} : { tax }),
        ...(freight.value === 0 ? {} : { freightMinor: minorFrom(freight.value, money) }),
        on: on.value,
      },
      step: { fromPacks: from.value, priceMinor: minorFrom(price.value, money) },
      row,
    }
  }

  #cell({ cells }: Row, field: PriceField): string {
    const at = this.columns.indexOf(field)
    return at < 0 ? '' : unguarded(cells[at] ?? '')
  }

  #wrong(row: Row, field: PriceField, { reason }: { readonly reason: string }): string {
    const text = this.#cell(row, field)
    return `${FIELD_NAMES[field]} ${text === '' ? '' : `“${text}” `}${reason}`
  }

  #tax(row: Row): Offer['tax'] | string {
    const text = this.#cell(row, 'taxPercent')
    const included = readYes(this.#cell(row, 'taxIncluded'), false)
    if (included.status === 'unread') return this.#wrong(row, 'taxIncluded', included)
    if (text === '') return undefined
    const percent = readNumber(text, this.conventions)
    if (percent.status === 'unread') return this.#wrong(row, 'taxPercent', percent)
    if (percent.value > 100) return this.#wrong(row, 'taxPercent', { reason: 'is over 100 %' })
    return percent.value === 0 ? undefined : { percent: percent.value, included: included.value }
  }

  #day(row: Row): Cell<string> {
    const text = this.#cell(row, 'on')
    if (text !== '') return readDay(text, this.conventions)
    this.#notes.add(`Rows without a date are taken as seen on ${this.setting.today}.`)
    return { status: 'read', value: this.setting.today }
  }

  /** From its own column, or from letters beside the price. */
  #currency(row: Row): string | undefined {
    const own = this.#cell(row, 'currency').toUpperCase()
    if (own !== '') return isCurrency(own) ? own : undefined
    return (
      /(?<![A-Z])[A-Z]{3}(?![A-Z])/u.exec(this.#cell(row, 'price'))?.[0] ?? this.setting.currency
    )
  }

  #material(row: Row, byPiece: boolean): { readonly id: string } | { readonly reason: string } {
    const own = [...this.setting.materials, ...this.#own]
    const [id, name] = [this.#cell(row, 'id'), this.#cell(row, 'material')]
    const byId = id === '' ? undefined : findMaterial(id, own)
    if (byId?.status === 'material' && byId.id === id) return { id }
    if (name === '') return { reason: 'It names no material' }
    const found = findMaterial(name, own)
    if (found.status === 'material') {
      if (found.note !== undefined) this.#notes.add(`“${name}” is ${found.note}.`)
      return { id: found.id }
    }
    if (found.status === 'several')
      return {
        reason: `Material “${name}” can be ${found.names.join(' or ')}. Name the one that is meant`,
      }
    if (!byPiece && this.choices.takeUnknown !== true)
      return {
        reason: `Material “${name}” is not known. Correct it, or take it as one of your own`,
      }
    const made = { id: id === '' ? ownId(name, own) : id, name }
    this.#own.push(made)
    this.#notes.add(`“${name}” is new, as a material of your own.`)
    return { id: made.id }
  }
}

function unread({ number, cells }: Row, reason: string): UnreadRow {
  const text = cells.join(' | ')
  const shown = text.length > SHOWN_LETTERS ? `${text.slice(0, SHOWN_LETTERS)}…` : text
  return { row: number, text: shown, reason }
}
