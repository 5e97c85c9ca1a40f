/**
 * Every tolerance of the solver, with its reason. Doubles carry about 16 digits; a blend has
 * numbers of size 100 with a dozen of them in a sum, so honest rounding noise is about 1e-13.
 *
 * Sources: P.M.J. Harris, Mathematical Programming 5 (1973) 1-28; I. Maros, Computational
 * Techniques of the Simplex Method (2003), chapter 9; A. Koberstein, The dual simplex method
 * (thesis, Paderborn 2005), chapter 6.
 */

/**
 * What a finished answer is held to, in the caller's units: a row may miss its range by this part
 * of its magnitude, and the primal and dual objectives may differ by this part of theirs.
 */
export const ANSWER_TOLERANCE = 1e-9

/**
 * How far a value may pass a bound while pivoting, relative to 1 + |bound| in scaled units. Ten
 * times tighter than the answer's, so that an end of pivoting is nearly always an answer.
 */
export const FEASIBILITY = 1e-10

/**
 * By how much rows are widened for a last attempt, relative to 1 + |bound| in scaled units, where a
 * program misses a feasible point by so little that neither a point nor a proof that there is none can
 * be had: half of what a row may miss in an answer.
 */
export const LAST_WIDENING = 5e-10

/** How far a reduced cost may have the wrong sign while pivoting; scaled costs are near 1. */
export const DUAL_FEASIBILITY = 1e-10

/** The same for a second attempt, when costs of very different size may hide in the first. */
export const FINE_DUAL_FEASIBILITY = 1e-14

/** Tableau entries below this are taken for rounding noise and never pivoted on. */
export const PIVOT_ZERO = 1e-9

/** A pivot below this is refused unless the tableau was just rebuilt from the data. */
export const SMALL_PIVOT = 1e-7

/** A step shorter than this counts as no progress when watching for cycles. */
export const PROGRESS = 1e-12

/** Rounding noise of a sum relative to the sum of its absolute terms: 4,500 units in the last place. */
export const ROUNDING = 1e-12

/** Rounding of one sum of a dozen terms, relative to the largest: four units in the last place. */
export const DIGITS = 2 ** -50

/** Pivots between two rebuilds from the original data, to keep drift below the tolerances. */
export const REBUILD_AFTER = 100

/** Steps without progress per row before Bland's rule takes over. */
export const PATIENCE_PER_ROW = 3

/** Most pivots of one attempt, per row and column together. */
export const PIVOTS_PER_LINE = 50

/** Dual steps without progress before the reduced costs are perturbed. */
export const PERTURB_AFTER = 2

/**
 * Size of that perturbation; scaled costs are near 1. Far above DUAL_FEASIBILITY so that it orders
 * the ratios, and undone at the end by recomputing the true reduced costs. Any size from 1e-6 to
 * 1e-2 gave the same number of pivots within a tenth (measured on 1,200 blends).
 */
export const PERTURBATION = 1e-5

/** Fractional part of the golden ratio: its multiples spread evenly over [0, 1). */
export const GOLDEN_RATIO = 0.6180339887498949
