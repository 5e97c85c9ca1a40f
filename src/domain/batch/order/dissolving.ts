import { problem, type Problem } from '../../blend/check-blend'
import { NOISE_PERCENT } from '../../noise'

/**
 * Hydroxide above this part of the solution does not stay dissolved, percent by weight. A saturated
 * solution of NaOH holds about 52 % at 20 °C and 50 % starts to freeze near 14 °C (handbook solubility
 * tables); KOH holds a little more, and is kept to the same limit.
 */
export const MOST_LYE_CONCENTRATION_PERCENT = 50

/** A lye too strong to dissolve, in percent of hydroxide by weight. */
export function dissolving(path: string, concentrationPercent: number): Problem[] {
  if (concentrationPercent <= MOST_LYE_CONCENTRATION_PERCENT + NOISE_PERCENT) return []
  const message =
    `The lye would hold ${concentrationPercent.toFixed(1)} % hydroxide, and more than ` +
    `${MOST_LYE_CONCENTRATION_PERCENT} % does not stay dissolved. Give more water.`
  return [problem(path, message)]
}
