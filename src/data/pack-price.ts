import { GRAMS_PER_KG, gramsFrom, ML_PER_LITRE } from '../domain/units'
import { unitMeant } from './mass-words'
import { readPlain } from './plain-number'
import type { Typed, TypedField } from './typed-field'

/** A price over what a pack holds: 38.50/5l, 12 per 500 g, 6.20 €/kg. */
const PACK =
  /^(?<price>[^/]*?\d[^/]*?)\s*(?:\/|\bper\b|\bfor\b|\bfür\b|\bpour\b|\bpro\b)\s*(?<size>\d[\d.,]*)?\s*(?<unit>\p{L}+)$/iu

/** Millilitres in the volumes that packs are sold in. */
const ML_IN: Readonly<Record<string, number>> = { ml: 1, cl: 10, l: ML_PER_LITRE }

/** A pack's price taken apart. */
export interface PackPrice {
  readonly price: string
  readonly size: number
  readonly unit: string
}

/** Takes a price over a pack apart; undefined where the text is none. */
export function packPrice(text: string): PackPrice | undefined {
  const { price, size = '1', unit } = PACK.exec(text)?.groups ?? {}
  if (price === undefined || unit === undefined) return undefined
  const holds = readPlain(size)
  if (holds.status !== 'number' || !(holds.value > 0)) return undefined
  const word = unit.toLowerCase().replace(/^(?:liter|litre)s?$/u, 'l')
  const meant = unitMeant(word)
  if (meant === undefined || meant === 'percent' || meant === 'bare') return undefined
  return { price, size: holds.value, unit: meant === 'volume' ? word : meant }
}

/** Prices per kg are shown to this many decimals, and so are taken to them. */
const PRICE_DECIMALS = 2

function toCents(price: number): number {
  return Number(price.toFixed(PRICE_DECIMALS))
}

/** The price of 1 kg, given that of the pack in plain figures. */
export function perKg(
  price: number,
  { size, unit }: PackPrice,
  { currency, perKg: of }: TypedField,
): Typed {
  const money = currency ?? 'money'
  if (unit === 'kg' || unit === 'g' || unit === 'oz' || unit === 'lb') {
    const value = toCents((price * GRAMS_PER_KG) / gramsFrom(size, unit))
    return { status: 'number', value, understood: `${value.toFixed(2)} ${money} per kg` }
  }
  const ml = ML_IN[unit]
  const density = of?.densityGPerMl ?? undefined
  if (ml === undefined)
    return {
      status: 'invalid',
      message: `A ${unit} is no weight. Give the price of g, kg, oz, lb or l`,
    }
  if (density === undefined)
    return {
      status: 'invalid',
      message: 'What a litre of it weighs is not known. Give the price of kg',
    }
  const value = toCents((price * GRAMS_PER_KG) / (size * ml * density))
  return {
    status: 'number',
    value,
    understood: `${value.toFixed(2)} ${money} per kg, at ${density} kg a litre`,
  }
}
