/** A cell of a table: a number stays a number, anything else is text. */
export type Cell = string | number | undefined

/** Text that starts with one of these would be run as a formula by a spreadsheet. */
const RUNS_AS_FORMULA = /^[=+\-@\t\r]/u

/** Needs quotes inside a comma-separated file (RFC 4180, rule 6). */
const NEEDS_QUOTES = /[",\r\n]/u

/** Tells spreadsheets that the file is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF'

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
  return BYTE_ORDER_MARK + rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')
}

function cellText(cell: Cell): string {
  if (cell === undefined) return ''
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : ''
  const safe = RUNS_AS_FORMULA.test(cell) ? `'${cell}` : cell
  return NEEDS_QUOTES.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
