/**
 * The one place with conversion factors.
 *
 * Inside the domain masses are grams, temperatures degrees Celsius and volumes millilitres.
 * Shares of a blend are percent of oil weight, because briefs, programs and makers all speak so;
 * superfat, purity and lye concentration become fractions (0 to 1) as soon as they are read.
 */

/** Grams in a kilogram. */
export const GRAMS_PER_KG = 1000

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
