import { amountFrom, minorDigits } from '../../domain/cost/money'
import type { Offer, OfferUnit } from '../../domain/cost/offer'
import type { PriceAge } from '../../domain/cost/price-age'
import type { CostGroup } from '../../domain/cost/run-cost'
import type { CostUnit, Loss } from '../../domain/cost/waterfall'
import { GRAMS_PER_KG } from '../../domain/units'
import { money, number, withUnit } from '../words/format'

/** Money from minor units, with as many decimals as its currency has, and `finer` more. */
export function moneyText(minor: number, currency: string, finer = 0): string {
  return money(amountFrom(minor, currency), currency, minorDigits(currency) + finer)
}

/** An amount of a material: g up to a kilogram, kg above, or pieces. */
export function amountText(amount: number, byPiece: boolean): string {
  if (byPiece) return `${number(amount, 0)} ${Math.round(amount) === 1 ? 'piece' : 'pieces'}`
  return amount < GRAMS_PER_KG
    ? withUnit(amount, 0, 'g')
    : withUnit(amount / GRAMS_PER_KG, amount < TEN_KG ? 2 : 1, 'kg')
}

const TEN_KG = 10 * GRAMS_PER_KG

/** What a pack is: "5 l", "250 pieces". */
export function packText({ size, unit }: Pick<Offer, 'size' | 'unit'>): string {
  if (unit === 'piece') return amountText(size, true)
  return `${number(size, Number.isInteger(size) ? 0 : 2)}\u2009${unit}`
}

/** Units for a pick list. */
export const UNIT_OPTIONS: readonly { readonly value: OfferUnit; readonly label: string }[] = (
  ['kg', 'g', 'l', 'ml', 'lb', 'oz', 'piece'] as const
).map((value) => ({ value, label: value === 'piece' ? 'pieces' : value }))

export const STEP_NAMES: Readonly<Record<CostGroup | Loss, string>> = {
  oils: 'Oils',
  alkali: 'Alkali',
  fragrance: 'Fragrance',
  additives: 'Additives',
  labour: 'Labour',
  overhead: 'Overhead',
  packaging: 'Packaging',
  trimmings: 'Lost in trimmings',
  rejects: 'Lost in rejects',
  cure: 'Dried off in the cure',
}

export const UNIT_NAMES: Readonly<Record<CostUnit, string>> = {
  bar: 'a bar',
  batch: 'a batch',
  kg: 'a kg of cured soap',
}

/** How old a price is, in words. */
export function ageText({ days, age }: { days: number; age: PriceAge }): string {
  if (days === 0) return 'today'
  const old = days === 1 ? '1 day' : `${number(days, 0)} days`
  return age === 'old' ? `${old}, ask anew` : old
}

/** A day as people read it: 25 Nov 2026. */
export function dayText(day: string): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeZone: 'UTC' }).format(
    Date.parse(day),
  )
}
