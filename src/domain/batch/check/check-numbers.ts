import { plain, problem, type Problem } from '../../blend/check-blend'
import { WHOLE_PERCENT } from '../../units'

/** A number that must be above 0, in a unit. */
export function positive(path: string, value: number, unit: string): Problem[] {
  if (Number.isFinite(value) && value > 0) return []
  return [problem(path, `The value is ${value} ${unit}. Give a number above 0.`)]
}

/** The same where it may be left out. */
export function positiveIfGiven(path: string, value: number | undefined, unit: string): Problem[] {
  return value === undefined ? [] : positive(path, value, unit)
}

/** A number that must be 0 or more, where it is given. */
export function notNegative(path: string, value: number | undefined, unit: string): Problem[] {
  if (value === undefined || (Number.isFinite(value) && value >= 0)) return []
  return [problem(path, `The value is ${value} ${unit}. Give 0 or more.`)]
}

/** A percentage above 0 and at most 100, where it is given. */
export function partPercent(path: string, value: number | undefined, what: string): Problem[] {
  if (value === undefined || (value > 0 && value <= WHOLE_PERCENT)) return []
  return [problem(path, `The ${what} is ${value} %. Give more than 0 and at most 100 %.`)]
}

/**
 * A percentage given as a fraction, where it is given: 0.99 for 99 %. `upTo` is the largest figure that can
 * only be meant so, percent; 1 where left out.
 */
export function fractionSlip(
  path: string,
  value: number | undefined,
  what: string,
  upTo = 1,
): Problem[] {
  if (value === undefined || !(value > 0 && value <= upTo)) return []
  const meant = plain(Number((value * WHOLE_PERCENT).toPrecision(FIGURES)))
  return [
    problem(
      path,
      `The ${what} is ${value} %: did you mean ${meant} %? Give percent, not a fraction.`,
    ),
  ]
}

/** Figures of a typed number that are not floating-point noise. */
const FIGURES = 12

/** A number between two ends, where it is given. */
export function between(
  path: string,
  value: number | undefined,
  { least, most, unit }: { least: number; most: number; unit: string },
): Problem[] {
  if (value === undefined || (value >= least && value <= most)) return []
  return [problem(path, `The value is ${value} ${unit}. Give ${least} to ${most} ${unit}.`)]
}
