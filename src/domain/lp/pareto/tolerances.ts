/**
 * How near a point must come to a plane to count as on it, and two images to each other to count
 * as one, as a fraction of each objective's attainable range. Corners of blends with figures of
 * three or four digits lie 1e-4 or more apart, rounding makes about 1e-13: this is between.
 */
export const SURFACE_TOLERANCE = 1e-9

/**
 * An objective whose range is less than this part of its size, its largest cost times the largest
 * variable, is treated as that wide. Solvers' answers are good to about 1e-13 of that size: a narrower
 * range would blow their noise up into corners. Of a measure of 0 to 100 points, 1e-9 of this is 1e-9
 * of a point.
 */
export const NARROWEST_RANGE = 1e-2

/** Weights below this, of a unit normal, are rounding of a zero. */
export const WEIGHT_ZERO = 1e-12

/** A sum of costs below this part of its terms is rounding of a zero. */
export const COST_ROUNDING = 1e-14
