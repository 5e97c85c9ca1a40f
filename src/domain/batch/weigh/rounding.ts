import { NOISE_COUNT } from '../../noise'
/** A weight in g at the scale's nearest mark; as it is where no step is stated. */
export function roundedToNearest(grams: number, stepG: number | undefined): number {
  return onScale(grams, stepG, Math.round)
}

/** A weight in g at the scale's mark below. */
export function roundedDown(grams: number, stepG: number | undefined): number {
  return onScale(grams, stepG, (steps) => Math.floor(steps + NOISE_COUNT))
}

/** A weight in g at the scale's mark above. */
export function roundedUp(grams: number, stepG: number | undefined): number {
  return onScale(grams, stepG, (steps) => Math.ceil(steps - NOISE_COUNT))
}

/** Steps are decimal (1, 0.1, 0.05), so the product is cleaned of binary noise to their own decimals. */
function onScale(
  grams: number,
  stepG: number | undefined,
  round: (steps: number) => number,
): number {
  if (stepG === undefined) return grams
  return Number((round(grams / stepG) * stepG).toFixed(decimalsOf(stepG)))
}

/** Decimals a step is written with: 0 for 1 or 5, 1 for 0.1, 2 for 0.05. */
export function decimalsOf(step: number): number {
  const [mantissa = '', exponent = '0'] = step.toExponential().split('e')
  const digits = (mantissa.split('.')[1] ?? '').length
  return Math.max(0, digits - Number(exponent))
}
