import { addMultiple, dot } from './kernel'
import type { ScaledProgram } from './scaled'
import { touchOf } from '../touching'
import { ANSWER_TOLERANCE, DIGITS, ROUNDING } from './tolerances'

/*
 * Proofs, all computed from the program as the caller gave it and in the caller's units; none
 * looks at a tableau. An answer that fails its proof does not leave the solver.
 */

/**
 * Whether x obeys its bounds and every row's range, each within ANSWER_TOLERANCE of its magnitude:
 * 1 or the sum of the row's absolute terms, whichever is larger. `rowValues` are those of x.
 */
export function isPrimalFeasible(
  program: ScaledProgram,
  x: Float64Array,
  rowValues: Float64Array,
): boolean {
  const { columnCount: n, rowCount: m, lower, upper } = program
  for (let j = 0; j < n; j++) {
    if (missed(x[j]!, lower[j]!, upper[j]!) > ANSWER_TOLERANCE * Math.max(1, Math.abs(x[j]!)))
      return false
  }
  for (let i = 0; i < m; i++) {
    const miss = missed(rowValues[i]!, lower[n + i]!, upper[n + i]!)
    if (miss > ANSWER_TOLERANCE && miss > ANSWER_TOLERANCE * rowMagnitude(program, i, x))
      return false
  }
  return true
}

function missed(value: number, lower: number, upper: number): number {
  return Math.max(lower - value, value - upper, 0)
}

function rowMagnitude(program: ScaledProgram, row: number, x: Float64Array): number {
  const start = row * program.columnCount
  let sum = 0
  for (let j = 0; j < x.length; j++) sum += Math.abs(program.matrix[start + j]! * x[j]!)
  return sum
}

/**
 * Whether multipliers prove that no feasible point is cheaper than `objective`. Any row prices
 * give the bound Σ min(d · lower, d · upper) over variables and rows (weak duality), d being
 * `reducedCosts` for variables and `duals` for rows; here it must meet the objective (strong
 * duality) within ANSWER_TOLERANCE of the magnitude of the terms added up, or where all of them
 * are next to nothing, within rounding of one unit's cost, or of the reduced costs where that is less than
 * ANSWER_TOLERANCE of it.
 */
export function isOptimalityProved(
  program: ScaledProgram,
  x: Float64Array,
  duals: Float64Array,
  reducedCosts: Float64Array,
  objective: number,
): boolean {
  const { columnCount: n, rowCount: m, cost, costScale, lower, upper } = program
  let bound = 0
  let magnitude = 0
  for (let v = 0; v < n + m; v++) {
    const d = v < n ? reducedCosts[v]! : duals[v - n]!
    if (d === 0) continue
    const term = d * (d > 0 ? lower[v]! : upper[v]!)
    if (term === -Infinity) {
      // No bound on this side: only rounding may pull there.
      if (v >= n || Math.abs(d) > priceRounding(program, duals, v)) return false
      continue
    }
    bound += term
    magnitude += Math.abs(term)
  }
  for (let j = 0; j < n; j++) magnitude += Math.abs(cost[j]! * x[j]!)
  const miss = Math.abs(objective - bound)
  if (miss <= Math.max(ANSWER_TOLERANCE * magnitude, ROUNDING * costScale)) return true
  return miss <= ANSWER_TOLERANCE * costScale && miss <= boundRounding(program, duals, reducedCosts)
}

/** What rounding of the reduced costs alone can make of the bound, where an optimum is next to nothing. */
function boundRounding(
  program: ScaledProgram,
  duals: Float64Array,
  reducedCosts: Float64Array,
): number {
  const { columnCount: n, cost, lower, upper } = program
  let rounding = 0
  for (let j = 0; j < n; j++) {
    const end = Math.abs(reducedCosts[j]! > 0 ? lower[j]! : upper[j]!)
    if (reducedCosts[j] === 0 || end === Infinity) continue
    rounding += DIGITS * end * (Math.abs(cost[j]!) + weightMagnitude(program, duals, j))
  }
  return rounding
}

/** How far from zero a reduced cost may be by rounding, of its own sum or of the tableau's. */
function priceRounding(program: ScaledProgram, duals: Float64Array, column: number): number {
  const sum = Math.abs(program.cost[column]!) + weightMagnitude(program, duals, column)
  const unit = program.costScale / program.scale[column]!
  return Math.max(ANSWER_TOLERANCE * sum, ROUNDING * unit)
}

/** Σ |weight · entry| down a column. */
function weightMagnitude(program: ScaledProgram, weights: Float64Array, column: number): number {
  let sum = 0
  for (let i = 0; i < program.rowCount; i++) {
    sum += Math.abs(weights[i]! * program.matrix[i * program.columnCount + column]!)
  }
  return sum
}

/** Cost less what the rows' prices pay for it: d = cost - duals · matrix, written to `into`. */
export function reducedCostsOf(
  program: ScaledProgram,
  duals: Float64Array,
  into: Float64Array,
): void {
  into.set(program.cost)
  addRows(program, duals, -1, into)
}

/** into += sign · (weights · matrix). */
export function addRows(
  program: ScaledProgram,
  weights: Float64Array,
  sign: number,
  into: Float64Array,
): void {
  const n = program.columnCount
  for (let i = 0; i < program.rowCount; i++) {
    const weight = sign * weights[i]!
    if (weight !== 0) addMultiple(into, 0, weight, program.matrix, i * n, n)
  }
}

/**
 * Farkas's proof that no point is feasible. The rows weighted with `rowWeights` add up to one row
 * with coefficients `columnWeights`; the least value the variables' bounds allow that sum exceeds
 * the largest value the rows' ranges allow it by the returned gap. Not above 0: no proof.
 *
 * Source: J. Farkas, Journal für die reine und angewandte Mathematik 124 (1902) 1-27.
 */
export function farkasGap(
  program: ScaledProgram,
  rowWeights: Float64Array,
  columnWeights: Float64Array,
): number {
  const { columnCount: n, rowCount: m, lower, upper } = program
  let gap = 0
  let magnitude = 0
  for (let v = 0; v < n + m; v++) {
    const weight = v < n ? columnWeights[v]! : -rowWeights[v - n]!
    if (weight === 0) continue
    const term = weight * (weight > 0 ? lower[v]! : upper[v]!)
    if (term === -Infinity) {
      if (v < n && Math.abs(weight) <= ROUNDING * weightMagnitude(program, rowWeights, v)) continue
      return -Infinity
    }
    gap += term
    magnitude += Math.abs(term)
  }
  return gap > ROUNDING * magnitude ? gap : 0
}

/** The gap of Farkas's proof that the room of touching limits takes away: a larger one stands. */
export function touchingGap(
  { columnCount: n, rowCount: m, lower, upper }: ScaledProgram,
  rowWeights: Float64Array,
): number {
  let room = 0
  for (let i = 0; i < m; i++) {
    const weight = rowWeights[i]!
    if (weight !== 0) room += Math.abs(weight) * touchOf(weight > 0 ? upper[n + i]! : lower[n + i]!)
  }
  return room
}

/**
 * Whether the objective falls for ever along `ray`: its cost is negative, and no bound or row
 * range is met on the way, up to rounding.
 */
export function isUnboundedRay(program: ScaledProgram, ray: Float64Array): boolean {
  const { columnCount: n, rowCount: m, lower, upper, cost } = program
  for (let v = 0; v < n + m; v++) {
    const rate = v < n ? ray[v]! : program.rowValue(v - n, ray)
    const noise = v < n ? 0 : ROUNDING * rowMagnitude(program, v - n, ray)
    if (rate > noise && upper[v] !== Infinity) return false
    if (rate < -noise && lower[v] !== -Infinity) return false
  }
  let magnitude = 0
  for (let j = 0; j < n; j++) magnitude += Math.abs(cost[j]! * ray[j]!)
  return dot(cost, 0, ray, 0, n) < -ROUNDING * magnitude
}
