/**
 * The one place with conversion factors.
 *
 * Inside the domain masses are grams, temperatures degrees Celsius and volumes millilitres.
 * Shares of a blend are percent of oil weight, because briefs, programs and makers all speak so;
 * superfat, purity and lye concentration become fractions (0 to 1) as soon as they are read.
 */

/** Grams in a kilogram. */
export const GRAMS_PER_KG = 1000

/** Millilitres in a litre. */
export const ML_PER_LITRE = 1000

/** Milliseconds in a second. */
export const MS_PER_SECOND = 1000

/** Grams in an avoirdupois pound: exact, by the international yard and pound agreement of 1959. */
export const GRAMS_PER_POUND = 453.59237

/** Grams in an avoirdupois ounce, the sixteenth of a pound. */
export const GRAMS_PER_OUNCE = GRAMS_PER_POUND / 16

/** Units of mass that oils are sold and weighed in. */
export type MassUnit = 'g' | 'kg' | 'oz' | 'lb'

/** Grams in each unit of mass. */
export const GRAMS_PER: Readonly<Record<MassUnit, number>> = {
  g: 1,
  kg: GRAMS_PER_KG,
  oz: GRAMS_PER_OUNCE,
  lb: GRAMS_PER_POUND,
}

/** A mass in one of its units as grams. */
export function gramsFrom(mass: number, unit: MassUnit): number {
  return mass * GRAMS_PER[unit]
}

/** Milligrams in a gram: saponification values are mg KOH per g of fat. */
export const MG_PER_GRAM = 1000

/** The whole of a blend, in percent of oil weight. */
export const WHOLE_PERCENT = 100

/** A percentage (0 to 100) as a fraction (0 to 1). */
export function fractionFromPercent(percent: number): number {
  return percent / WHOLE_PERCENT
}

/** A fraction (0 to 1) as a percentage (0 to 100). */
export function percentFromFraction(fraction: number): number {
  return fraction * WHOLE_PERCENT
}

/** A content in g per kg as a mass fraction. */
export function fractionFromPerMille(gPerKg: number): number {
  return gPerKg / GRAMS_PER_KG
}
