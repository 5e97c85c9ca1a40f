import { withoutMark } from './csv'
import { dsvFormat } from 'd3'
import { type Conventions, dayFirstShown, decimalShown } from './price-cells'
import { columnsOf, missingFields } from './price-columns'
import type { PriceColumns, PriceField } from './price-fields'
import {
  type ImportChoices,
  type ImportSetting,
  type Row,
  RowReader,
  type RowsRead,
  unread,
  type UnreadRow,
} from './price-rows'

export type { ImportChoices, ImportSetting, UnreadRow } from './price-rows'

/** What a list came to. */
export interface PriceImport extends RowsRead {
  readonly unread: readonly UnreadRow[]
  readonly columns: PriceColumns
  /** The first rows as they stand, to match columns by. */
  readonly preview: readonly (readonly string[])[]
  /** Needed columns that nobody matched; nothing is read then. */
  readonly lacking: readonly PriceField[]
}

const DELIMITERS = [',', ';', '\t', '|'] as const
const PREVIEW_ROWS = 5
/** Rows looked at for headings and for the sign that parts cells. */
const LOOKED_AT = 12
/** More rows than a maker's list has: reading a page of unknown names takes about 1 ms a row. */
const MOST_ROWS = 2000

/** Reads a list of prices, whatever parts its cells; every row is read or reported, none is dropped. */
export function readPriceList(
  text: string,
  setting: ImportSetting,
  choices: ImportChoices = {},
): PriceImport {
  const rows = rowsOf(withoutMark(text))
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
