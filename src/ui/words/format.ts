import type { Blend } from '../../domain/blend/blend'
import type { Measure } from '../../domain/blend/measure'
import type { Oil } from '../../domain/blend/oil'
import { figure as number, THIN_SPACE, TRUE_MINUS } from '../../domain/number-text'

export { number }

/** A difference, always with its sign. */
export function difference(value: number, decimals: number): string {
  return Number(value.toFixed(decimals)) > 0
    ? `+${number(value, decimals)}`
    : number(value, decimals)
}

/** A figure with its unit after a thin space. */
export function withUnit(value: number, decimals: number, unit: string): string {
  return `${number(value, decimals)}${THIN_SPACE}${unit}`
}

/** Money such as €4.57; the sign of the currency comes from Intl. */
export function money(value: number, currency: string, decimals = 2): string {
  const text = number(value, decimals)
  const sign = text.startsWith(TRUE_MINUS) ? TRUE_MINUS : ''
  return `${sign}${currencySign(currency)}${text.slice(sign.length)}`
}

/** Signs found so far: making a format takes longer than using one. */
const signs = new Map<string, string>()

/** The narrow sign of an ISO 4217 currency. */
export function currencySign(currency: string): string {
  const sign = signs.get(currency) ?? signBy(currency)
  signs.set(currency, sign)
  return sign
}

function signBy(currency: string): string {
  const parts = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
  }).formatToParts(0)
  return parts.find(({ type }) => type === 'currency')?.value ?? currency
}

/** Decimals a measure's values are shown with. */
export function measureDecimals(measure: Measure): number {
  return measure.unit === 'points' ? 1 : 2
}

/** A measure's value as it stands in a sentence. */
export function measureValue(measure: Measure, value: number, currency: string): string {
  return measure.unit === 'points' ? number(value, 1) : money(value, currency)
}

/** A blend in words, largest share first: "Coconut 28.2 %, Shea 30.5 %". */
export function blendInWords(blend: Blend, oils: ReadonlyMap<string, Oil>): string {
  return Object.entries(blend)
    .filter(([, share]) => share > 0)
    .sort(([, a], [, b]) => b - a)
    .map(([oil, share]) => `${oils.get(oil)?.shortName ?? oil} ${withUnit(share, 1, '%')}`)
    .join(', ')
}

/** A time of day as on a clock, 14:02, from ms since 1970. */
export function clock(at: number): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' }).format(at)
}
