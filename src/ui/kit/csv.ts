import { csvFormatRow } from 'd3'
import { BYTE_ORDER_MARK, guarded } from '../../data/csv'

/** A cell of a table: a number stays a number, anything else is text. */
export type Cell = string | number | undefined

/** Figures in files are rounded to so many decimals, to be free of binary noise. */
const DECIMALS = 4

/** A figure as it goes into a file. */
export function fileNumber(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Number(value.toFixed(DECIMALS))
}

/**
 * A table as comma-separated values (RFC 4180) with a byte order mark. Numbers are written plainly, with
 * a point and an ordinary minus. Text that a spreadsheet would run as a formula gets an apostrophe before it.
 */
export function csvOf(rows: readonly (readonly Cell[])[]): string {
  return BYTE_ORDER_MARK + rows.map((row) => `${csvFormatRow(row.map(cellText))}\r\n`).join('')
}

function cellText(cell: Cell): string {
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : ''
  return guarded(cell ?? '')
}
