import { currencySign } from '../words/format'

/** Currencies offered for prices, as ISO 4217 codes; a file may name any other. */
const OFFERED = [
  'EUR',
  'USD',
  'GBP',
  'AUD',
  'BRL',
  'CAD',
  'CHF',
  'CZK',
  'DKK',
  'INR',
  'MXN',
  'NOK',
  'NZD',
  'PLN',
  'SEK',
  'ZAR',
] as const

const names = new Intl.DisplayNames('en', { type: 'currency' })

/** The currencies to pick from, the one in use among them. */
export function currencyOptions(current: string): { value: string; label: string }[] {
  return [...new Set<string>([current, ...OFFERED])].map((code) => ({
    value: code,
    label: `${names.of(code) ?? code} (${currencySign(code)})`,
  }))
}
