/**
 * A linear program as this module reads it:
 *
 *     minimise    cost · x
 *     subject to  row.lower ≤ row.coefficients · x ≤ row.upper   for every row
 *                 lower ≤ x ≤ upper
 *
 * Any bound may be infinite; equal bounds make an equality. To maximise, negate the cost and the
 * objective. Units are the caller's: the module never mixes two variables except through the
 * coefficients given here.
 */
export interface LinearProgram {
  /** Cost per unit of each variable; its length is the number of variables. */
  readonly cost: ArrayLike<number>
  /** Least value of each variable, -Infinity for none. */
  readonly lower: ArrayLike<number>
  /** Largest value of each variable, Infinity for none. */
  readonly upper: ArrayLike<number>
  readonly rows: readonly LinearRow[]
}

/** The two ends of what a variable or a row may be; -Infinity and Infinity for none. */
export interface Bounds {
  readonly lower: number
  readonly upper: number
}

/** Bounds of a weighted sum of the variables. */
export interface LinearRow extends Bounds {
  /** One finite coefficient per variable. */
  readonly coefficients: ArrayLike<number>
}

/** A row of so many variables from pairs of variable and coefficient; those left out have 0. */
export function rowOfTerms(
  count: number,
  terms: Iterable<readonly [at: number, coefficient: number]>,
  { lower, upper }: Bounds,
): LinearRow {
  const coefficients = new Float64Array(count)
  for (const [at, coefficient] of terms) coefficients[at] = coefficient
  return { coefficients, lower, upper }
}

/** Thrown when a program is malformed: a caller's mistake, not an outcome of solving. */
export class ProgramError extends Error {
  override readonly name = 'ProgramError'
}

/** Throws unless `values` holds `count` finite numbers. */
export function requireFinite(what: string, values: ArrayLike<number>, count: number): void {
  if (values.length !== count) {
    throw new ProgramError(`${what} has ${values.length} entries, needs ${count}; give one each.`)
  }
  for (let k = 0; k < count; k++) {
    if (!Number.isFinite(values[k])) {
      throw new ProgramError(`${what} is ${values[k]} at ${k}; give a finite number.`)
    }
  }
}

/**
 * Throws unless [lower, upper] is a readable range. A lower bound above the upper one is not a
 * mistake here: solving answers it with `infeasible`.
 */
export function requireRange(what: string, lower: number, upper: number): void {
  if (Number.isNaN(lower) || lower === Infinity) {
    throw new ProgramError(`${what} has lower bound ${lower}; give a number or -Infinity.`)
  }
  if (Number.isNaN(upper) || upper === -Infinity) {
    throw new ProgramError(`${what} has upper bound ${upper}; give a number or Infinity.`)
  }
}
