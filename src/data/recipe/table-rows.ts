/** Units that a column can be headed by, alone or in brackets behind a word: “Weight (g)”. */
const UNIT_OF_HEAD: readonly (readonly [RegExp, string])[] = [
  [/^(?:.*[([])?\s*(?:%|percent|per cent|prozent)\s*[)\]]?$/iu, '%'],
  [/^(?:.*[([])?\s*(?:g|grams?|grammes?|gramm|gr)\s*[)\]]?$/iu, 'g'],
  [/^(?:.*[([])?\s*(?:oz|ounces?)\s*[)\]]?$/iu, 'oz'],
  [/^(?:.*[([])?\s*(?:lbs?|pounds?)\s*[)\]]?$/iu, 'lb'],
  [/^(?:.*[([])?\s*(?:kg|kilos?)\s*[)\]]?$/iu, 'kg'],
]

const FIGURE = /^[\d.,]+$/u
const RULE = /^[\s|:+=-]*$/u

/**
 * Lines with the rows of tables made plain: cells parted by tabs, a figure with the unit that its column is
 * headed by, heads and ruled lines emptied. Other lines stay as they are; their number stays too.
 */
export function rowsOf(lines: readonly string[]): string[] {
  let units: readonly (string | undefined)[] = []
  return lines.map((line) => {
    const cells = cellsOf(line)
    if (cells === undefined) {
      if (line.trim() !== '') units = []
      return line
    }
    if (RULE.test(line)) return ''
    const heads = cells.map(unitOfHead)
    if (!/\d/u.test(line) && heads.some((unit) => unit !== undefined)) {
      units = heads
      return ''
    }
    return cells.map((cell, column) => withUnit(cell, units[column])).join('\t')
  })
}

/** The cells of a row, undefined where the line is none. */
function cellsOf(line: string): string[] | undefined {
  const inner = line.trim().replace(/^\||\|$/gu, '')
  const by = line.includes('|') ? '|' : line.includes('\t') ? '\t' : undefined
  if (by === undefined) return undefined
  const cells = inner.split(by).map((cell) => cell.trim())
  const isRow =
    by === '\t' || /^\s*\|/u.test(line) || RULE.test(line) || cells.slice(1).every(isFigureOrHead)
  return isRow ? cells : undefined
}

function isFigureOrHead(cell: string): boolean {
  return cell === '' || !/\p{L}{3}/u.test(cell)
}

function unitOfHead(cell: string): string | undefined {
  return UNIT_OF_HEAD.find(([head]) => head.test(cell))?.[1]
}

function withUnit(cell: string, unit: string | undefined): string {
  return unit !== undefined && FIGURE.test(cell) ? `${cell} ${unit}` : cell
}
