/** A Markdown table; Prettier aligns it. */
export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n')
}

const MICROSECONDS = 1000
const DIGITS = 3

/** Milliseconds with three figures; below one in microseconds. */
export function time(ms: number): string {
  return ms < 1 ? `${figures(ms * MICROSECONDS)} µs` : `${figures(ms)} ms`
}

/** So many times as fast. */
export function times(ratio: number): string {
  return `${figures(ratio)} ×`
}

/** A number with three figures, never with an exponent. */
export function figures(value: number): string {
  const decimals = DIGITS - 1 - Math.floor(Math.log10(Math.abs(value) || 1))
  return value.toFixed(Math.min(DIGITS, Math.max(0, decimals)))
}
