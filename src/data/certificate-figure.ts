import type { OwnFigure } from '../domain/blend/own-acids'

/** Standards that a line names its method by: their figures are no results. */
const METHOD =
  /\b(?:AOCS|ISO|EN|DIN|ASTM|IUPAC|USP|DGF|NF|COI|IOC)\b[\s/]*(?:(?:EN|ISO|Official Method)[\s/]*)*(?:[A-Z][a-z]?\s+|[A-Z]-[IVX]+\s+)?[\w.]*\d[\w.]*(?:[-:/][\w.]+)*/gu

const NUMBER = String.raw`\d+(?:\.\d+)?`
const RANGE = new RegExp(String.raw`(${NUMBER})\s*(?:-|to|bis)\s*(${NUMBER})`, 'giu')
const SINGLE = new RegExp(
  String.raw`(<|≤|max\.?|>|≥|min\.?)?\s*(${NUMBER})(?:\s*(?:±|\+\/-)\s*(${NUMBER}))?`,
  'giu',
)
const NOTHING = /\b(?:nd|n\.d\.?|not detected|trace[s]?)(?!\w)/iu

/**
 * The figure of a line: the last that stands alone, with its ± where it has one; else a range, as its middle
 * within its half; else "less than", as none within that; not detected is 0. Undefined without any.
 */
export function figureOf(line: string): OwnFigure | undefined {
  const text = plainNumbers(line)
  const ranges = [...text.matchAll(RANGE)].map(
    ([, low, high]) => [Number(low), Number(high)] as const,
  )
  const singles = [...text.replaceAll(RANGE, ' ').matchAll(SINGLE)]
  const results = singles.filter(([, limit]) => limit === undefined)
  const [, , value, within] = results.at(-1) ?? []
  if (value !== undefined)
    return { value: Number(value), ...(within === undefined ? {} : { within: Number(within) }) }
  if (NOTHING.test(text)) return { value: 0 }
  const range = ranges.at(-1)
  if (range) {
    const [low, high] = range
    return { value: rounded((low + high) / 2), within: rounded(Math.abs(high - low) / 2) }
  }
  const limit = singles.find(
    ([, sign]) => sign === '<' || sign === '≤' || /^max/iu.test(sign ?? ''),
  )
  return limit ? { value: 0, within: Number(limit[2]) } : undefined
}

/** Methods taken out, decimal commas as points, all dashes alike. */
function plainNumbers(line: string): string {
  return line
    .replaceAll(METHOD, ' ')
    .replaceAll(/(\d),(\d)/gu, '$1.$2')
    .replaceAll(/[‐-―−]/gu, '-')
    .replaceAll(/\u00a0/gu, ' ')
}

function rounded(value: number): number {
  return Number(value.toFixed(6))
}
