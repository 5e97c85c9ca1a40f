import { massDecimals } from '../../domain/batch/shown-mass'
import { GRAMS_PER, type MassUnit } from '../../domain/units'
import { number, withUnit } from '../format'

/** A weight's figure alone, in a person's unit, to the step of the scale it is weighed on. */
export function massFigure(grams: number, unit: MassUnit, stepG: number | null): string {
  return number(grams / GRAMS_PER[unit], massDecimals(unit, stepG))
}

/** A weight with its unit. */
export function massText(grams: number, unit: MassUnit, stepG: number | null): string {
  return withUnit(grams / GRAMS_PER[unit], massDecimals(unit, stepG), unit)
}

/** A weight that nobody puts on a scale, to whole grams or their like. */
export function roughMass(grams: number, unit: MassUnit): string {
  return massText(grams, unit, 1)
}

/** A sentence of the domain's with true minus signs. */
export function withMinus(sentence: string): string {
  return sentence.replaceAll(/(?<=[\s(])-(?=\d)/gu, '−')
}

/** A span such as "50 to 65 °C". */
export function spanText({ low, high }: { low: number; high: number }, unit: string): string {
  return `${number(low, 0)} to ${withUnit(high, 0, unit)}`
}
