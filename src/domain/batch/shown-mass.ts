import { GRAMS_PER, type MassUnit } from '../units'
import { decimalsOf } from './rounding'

/** Decimals of a weight that was not rounded to a scale, in g. */
const EXACT_DECIMALS = 1

/**
 * A weight in a unit, with as many decimals as the scale's step needs: read back and put to the nearest
 * mark it is the same weight, whatever the unit. Without a step, a tenth of a gram.
 */
export function shownMass(grams: number, unit: MassUnit, stepG: number | null): string {
  return `${(grams / GRAMS_PER[unit]).toFixed(massDecimals(unit, stepG))} ${unit}`
}

/** Decimals of steps that are written short, such as 0.005 g; more belong to a step of another unit. */
const MOST_DECIMALS = 3

/** Decimals for a weight in a unit: the figure's last place is worth at most one step of the scale, g. */
export function massDecimals(unit: MassUnit, stepG: number | null): number {
  const step = (stepG ?? 10 ** -EXACT_DECIMALS) / GRAMS_PER[unit]
  const written = decimalsOf(Number(step.toPrecision(MOST_DECIMALS + 1)))
  return written <= MOST_DECIMALS ? written : Math.max(0, Math.ceil(-Math.log10(step)))
}
