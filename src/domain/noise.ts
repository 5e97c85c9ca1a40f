/**
 * What floating point leaves of nothing, one limit for each thing it may be left in: far above the rounding of
 * a few dozen operations on numbers of their size, far below what a scale, a tie or a price can tell.
 * Tolerances of an algorithm stand with the algorithm.
 */

/** In a percentage: a superfat or share this little off a limit is on it. */
export const NOISE_PERCENT = 1e-9

/** In a quantity, as a part of it: two that differ by less are the same. */
export const NOISE_PART = 1e-9

/**
 * In a count of steps, bars or decimal places: so near a whole number is that number, as
 * 141.99999999999997 g on a 1 g scale are 142 g.
 */
export const NOISE_COUNT = 1e-9
