import { PERCENT, type TypedField } from './typed-field'

/** A text without the sign that stood at its figure, or why that sign can't stand there. */
export type Unsigned =
  { readonly text: string; readonly dropped?: string | undefined } | { readonly message: string }

/** Signs of money before or behind a figure: €, R$, EUR. */
const MONEY = String.raw`(?:[A-Z]{1,2})?\p{Sc}|(?:EUR|USD|GBP|CHF|CAD|AUD|NZD|SEK|NOK|DKK|PLN|CZK|BRL|MXN|INR|ZAR|JPY)\b|kr\b|zł|Kč`
const MONEY_BEFORE = new RegExp(`^(${MONEY})\\s*(?=[\\d.,])`, 'u')
const MONEY_BEHIND = new RegExp(`(?<=[\\d.,])\\s*(${MONEY})$`, 'u')
const OTHER = /(?<=[\d.,])\s*(%|°\s*[CF]?)$/u

/** Takes the sign off that a field's figure may have, and says where it is one that means something else. */
export function unsigned(text: string, field: TypedField): Unsigned {
  const money = MONEY_BEFORE.exec(text) ?? MONEY_BEHIND.exec(text)
  if (money) return withoutMoney(text.replace(money[0], '').trim(), money[1] ?? '', field)
  const [all, sign] = OTHER.exec(text) ?? []
  if (all === undefined || sign === undefined) return { text }
  const rest = text.slice(0, -all.length).trim()
  if (sign.endsWith('F')) return { message: 'Degrees are Celsius here. Type them without F' }
  if (sign === PERCENT && field.unit === PERCENT) return { text: rest }
  if (field.unit !== undefined && field.unit !== PERCENT)
    return { message: `${text} is no amount in ${field.unit}. Try 5.5 ${field.unit}` }
  if (field.currency !== undefined) return { message: `${text} is no price. Try 5.50` }
  return { text: rest, dropped: sign }
}

function withoutMoney(text: string, sign: string, { unit, currency }: TypedField): Unsigned {
  if (unit !== undefined) {
    const example = unit === PERCENT ? '5.5' : `5.5 ${unit}`
    return { message: `${sign} is money, and this is in ${unit}. Try ${example}` }
  }
  if (currency === undefined) return { text, dropped: sign }
  if (signsOf(currency).includes(sign)) return { text }
  return {
    message: `Prices here are in ${currency}, and ${sign} is another money. Type it in ${currency}`,
  }
}

/** How a currency may be written: its code and its signs, wide and narrow. */
function signsOf(currency: string): string[] {
  const signs = (['narrowSymbol', 'symbol'] as const).flatMap((currencyDisplay) =>
    ['en', 'de', 'fr'].map((language) =>
      new Intl.NumberFormat(language, { style: 'currency', currency, currencyDisplay })
        .formatToParts(0)
        .find(({ type }) => type === 'currency'),
    ),
  )
  return [currency, ...signs.flatMap((part) => part?.value ?? [])]
}
