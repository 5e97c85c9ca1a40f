import { fractionFromPercent } from '../../units'
import { roundedDown, roundedUp } from '../weigh/rounding'

/** The weight to print on a bar and what the average system asks of it. Grams. */
export interface NetWeight {
  readonly nominalG: number
  /** Tolerable negative error. */
  readonly toleranceG: number
  /** No bar may weigh less than this: nominal − 2 × tolerance. */
  readonly leastG: number
}

/**
 * Tolerable negative error by nominal weight: Directive 76/211/EEC Annex I, read in the German
 * FPackV § 9. Percent rows are rounded up to 0.1 g. Grams.
 */
const TOLERANCES = [
  { upToG: 50, percent: 9 },
  { upToG: 100, grams: 4.5 },
  { upToG: 200, percent: 4.5 },
  { upToG: 300, grams: 9 },
  { upToG: 500, percent: 3 },
  { upToG: 1000, grams: 15 },
  { upToG: 10000, percent: 1.5 },
] as const

/** The average system speaks of 5 g to 10 kg. */
const LEAST_NOMINAL_G = 5

/** Whole grams stand on labels. */
const NOMINAL_STEP_G = 1
const TOLERANCE_STEP_G = 0.1

/**
 * The net weight for bars of this weight when they are as dry as they get, g: whole grams, rounded down, so
 * that the mean of the driest batch is not less (rule 1). Null outside 5 g to 10 kg. Weigh the bars before
 * printing: cutting is not in it.
 */
export function netWeight(driestG: number): NetWeight | null {
  const nominalG = roundedDown(driestG, NOMINAL_STEP_G)
  const row = TOLERANCES.find(({ upToG }) => nominalG <= upToG)
  if (!row || nominalG < LEAST_NOMINAL_G) return null
  const toleranceG =
    'grams' in row
      ? row.grams
      : roundedUp(nominalG * fractionFromPercent(row.percent), TOLERANCE_STEP_G)
  return { nominalG, toleranceG, leastG: nominalG - 2 * toleranceG }
}
