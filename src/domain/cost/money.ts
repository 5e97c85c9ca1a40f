/**
 * Money is a whole number of the currency's minor units (cents, pence, yen); names of such numbers end in
 * `Minor`. A price per gram or per piece may have fractions of a minor unit.
 *
 * The rounding rule of the whole Ledger: the landed price of a pack and every line is rounded once, to the
 * nearest minor unit, a half away from zero. Sums are sums of rounded lines, so that every table adds up as
 * it is printed.
 */

/**
 * Decimal fractions such as 1.005 are stored a little below themselves: so near a half still counts as one.
 * A billionth of a minor unit, and some 45 units in the last place of large sums.
 */
const noise = (minor: number) => 1e-9 + 1e-14 * Math.abs(minor)

/** Decimal places of a currency where Intl is not told otherwise. */
const USUAL_DIGITS = 2

/** Rounds to a whole number of minor units, a half away from zero; noise of floating point aside. */
export function roundMinor(minor: number): number {
  const size = Math.abs(minor)
  const whole = Math.floor(size + 0.5 + noise(minor))
  return minor < 0 && whole > 0 ? -whole : whole
}

/** Rounds up to a whole number of minor units; noise of floating point aside. */
export function ceilMinor(minor: number): number {
  return Math.ceil(minor - noise(minor)) + 0
}

/** Decimals that a currency (ISO 4217) is written with: 2 for EUR, 0 for JPY, 3 for KWD; as Intl knows them. */
export function minorDigits(currency: string): number {
  const { maximumFractionDigits } = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
  }).resolvedOptions()
  return maximumFractionDigits ?? USUAL_DIGITS
}

/** An amount such as 12.5 as minor units of a currency, rounded. */
export function minorFrom(amount: number, currency: string): number {
  return roundMinor(amount * 10 ** minorDigits(currency))
}

/** Minor units of a currency as an amount such as 12.5. */
export function amountFrom(minor: number, currency: string): number {
  return minor / 10 ** minorDigits(currency)
}

/** Whether a text is a currency that Intl can write: three capital letters. */
export function isCurrency(text: string): boolean {
  return /^[A-Z]{3}$/u.test(text)
}

/** Money as people of a locale write it, such as €12.50 or 12,50 €; from minor units. */
export function formatMinor(minor: number, currency: string, locale: string): string {
  return new Intl.NumberFormat(locale, { style: 'currency', currency }).format(
    amountFrom(minor, currency),
  )
}
