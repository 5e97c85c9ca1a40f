/** Text that starts with one of these would be run as a formula by a spreadsheet. */
const RUNS_AS_FORMULA = /^'*[=+\-@\t\r]/u

/** Tells spreadsheets that the file is UTF-8. */
export const BYTE_ORDER_MARK = '\uFEFF'

/** Text without the mark that it may begin with. */
export function withoutMark(text: string): string {
  return text.startsWith(BYTE_ORDER_MARK) ? text.slice(BYTE_ORDER_MARK.length) : text
}

/** Text that no spreadsheet runs: an apostrophe goes before what would be, and `unguarded` takes it away. */
export function guarded(text: string): string {
  return RUNS_AS_FORMULA.test(text) ? `'${text}` : text
}

/** Text as it was before it was guarded. */
export function unguarded(text: string): string {
  return text.startsWith("'") && RUNS_AS_FORMULA.test(text.slice(1)) ? text.slice(1) : text
}
