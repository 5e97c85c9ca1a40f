import { partsOf } from './block'
import {
  addRows,
  farkasGap,
  isOptimalityProved,
  isPrimalFeasible,
  isUnboundedRay,
  reducedCostsOf,
} from './certificate'
import { dot } from './kernel'
import type { ScaledProgram } from './scaled'
import { BASIC, type Tableau } from './tableau'
import { ROUNDING } from './tolerances'

/**
 * What solving came to. The arrays belong to the solver and are overwritten by its next solve:
 * copy what is to be kept. An infeasible outcome carries a proof and no point.
 */
export type Outcome = Optimal | Infeasible | Unbounded

/** A feasible point proved to be the cheapest. */
export interface Optimal {
  readonly status: 'optimal'
  /** cost · x. */
  readonly objective: number
  /** The variables, within their bounds exactly. */
  readonly x: Float64Array
  /** Value of each row at x. */
  readonly rowValues: Float64Array
  /** Price of each row: objective gained per unit added to the bound it rests on, 0 if on none. */
  readonly duals: Float64Array
  /** Cost less what the rows pay for a variable: above 0 only at its lower bound, below at upper. */
  readonly reducedCosts: Float64Array
}

/** No point obeys all bounds and rows. */
export interface Infeasible {
  readonly status: 'infeasible'
  /** A variable, or row + number of variables, whose own two bounds cross; else -1. */
  readonly crossed: number
  /** Farkas's weights, largest row weight 1 (see `farkasGap`); all zero when bounds cross. */
  readonly rowWeights: Float64Array
  /** The weighted sum of the rows, by variable. */
  readonly columnWeights: Float64Array
  /** By how much that sum misses, or the crossed bounds do. */
  readonly gap: number
}

/** There are feasible points of any cost, however low. */
export interface Unbounded {
  readonly status: 'unbounded'
  /** A direction that stays feasible for ever while the objective falls. */
  readonly ray: Float64Array
}

type Writable<T> = { -readonly [K in keyof T]: T[K] }

/**
 * Turns a final tableau into an outcome in the caller's units and proves it from the caller's
 * data. Each method returns null when the proof fails. Arrays are made once and reused.
 */
export class Answer {
  private readonly optimal: Writable<Optimal>
  private readonly infeasible: Writable<Infeasible>
  private readonly unbounded: Unbounded

  constructor(private readonly program: ScaledProgram) {
    const { columnCount: n, rowCount: m } = program
    const part = partsOf(new Float64Array(4 * n + 3 * m))
    this.optimal = {
      status: 'optimal',
      objective: NaN,
      x: part(n),
      rowValues: part(m),
      duals: part(m),
      reducedCosts: part(n),
    }
    this.infeasible = {
      status: 'infeasible',
      crossed: -1,
      rowWeights: part(m),
      columnWeights: part(n),
      gap: NaN,
    }
    this.unbounded = { status: 'unbounded', ray: part(n) }
  }

  proveOptimal(t: Tableau): Optimal | null {
    const { program, optimal } = this
    this.readPoint(t)
    if (this.settleRows(t)) this.readPoint(t)
    if (!isPrimalFeasible(program, optimal.x, optimal.rowValues)) return null
    this.readPrices(t)
    const { x, duals, reducedCosts } = optimal
    optimal.objective = dot(program.cost, 0, x, 0, x.length)
    if (!isOptimalityProved(program, x, duals, reducedCosts, optimal.objective)) return null
    for (let j = 0; j < x.length; j++) if (t.status[j] === BASIC) reducedCosts[j] = 0
    return optimal
  }

  /** The point of the tableau, put within its bounds, and its row values. */
  private readPoint(t: Tableau): void {
    const { scale, lower, upper } = this.program
    const { x, rowValues } = this.optimal
    for (let j = 0; j < x.length; j++) {
      x[j] = Math.min(Math.max(t.value[j]! * scale[j]!, lower[j]!), upper[j]!)
    }
    for (let i = 0; i < rowValues.length; i++) rowValues[i] = this.program.rowValue(i, x)
  }

  /**
   * One step of iterative refinement: where a row that should rest on a bound misses it by
   * rounding, moves the basic variables by the tableau's column for that miss.
   */
  private settleRows(t: Tableau): boolean {
    const { scale, columnCount: n } = this.program
    let moved = false
    for (let j = 0; j < n; j++) {
      const v = t.columns[j]!
      if (v < n) continue
      const rest = t.value[v]!
      const miss = rest - this.optimal.rowValues[v - n]! / scale[v]!
      if (Math.abs(miss) <= ROUNDING * Math.max(1, Math.abs(rest))) continue
      t.move(j, miss)
      t.value[v] = rest
      moved = true
    }
    return moved
  }

  /** Row prices off the tableau; one that a missing bound makes senseless is rounding, so 0. */
  private readPrices(t: Tableau): void {
    const { scale, costScale, columnCount: n, lower, upper } = this.program
    const { duals, reducedCosts } = this.optimal
    duals.fill(0)
    for (let j = 0; j < n; j++) {
      const v = t.columns[j]!
      if (v < n) continue
      const price = (t.reduced[j]! * costScale) / scale[v]!
      const bound = price > 0 ? lower[v]! : upper[v]!
      duals[v - n] = Math.abs(bound) === Infinity ? 0 : price
    }
    reducedCostsOf(this.program, duals, reducedCosts)
  }

  /** Reads Farkas's weights off the row that no column could mend. */
  proveInfeasible(t: Tableau): Infeasible | null {
    const { program, infeasible } = this
    const { rowWeights, columnWeights } = infeasible
    const n = program.columnCount
    rowWeights.fill(0)
    for (let j = 0; j < n; j++) {
      const v = t.columns[j]!
      if (v >= n) rowWeights[v - n] = t.raySide * t.entries[t.rayRow * n + j]!
    }
    const head = t.heads[t.rayRow]!
    if (head >= n) rowWeights[head - n] = -t.raySide
    dropRounding(rowWeights)
    for (let i = 0; i < rowWeights.length; i++) rowWeights[i]! /= program.scale[n + i]!
    makeLargestOne(rowWeights)
    columnWeights.fill(0)
    addRows(program, rowWeights, 1, columnWeights)
    infeasible.crossed = -1
    infeasible.gap = farkasGap(program, rowWeights, columnWeights)
    return infeasible.gap > 0 ? infeasible : null
  }

  /** The outcome for a variable or row whose own bounds leave it no value. */
  crossed(variable: number): Infeasible {
    const { program, infeasible } = this
    infeasible.crossed = variable
    infeasible.rowWeights.fill(0)
    infeasible.columnWeights.fill(0)
    infeasible.gap = program.lower[variable]! - program.upper[variable]!
    return infeasible
  }

  proveUnbounded(t: Tableau): Unbounded | null {
    const { program, optimal, unbounded } = this
    const { ray } = unbounded
    const n = program.columnCount
    this.readPoint(t)
    if (!isPrimalFeasible(program, optimal.x, optimal.rowValues)) return null
    ray.fill(0)
    const entering = t.columns[t.rayColumn]!
    if (entering < n) ray[entering] = t.raySide
    for (let i = 0; i < program.rowCount; i++) {
      const v = t.heads[i]!
      if (v < n) ray[v] = t.raySide * t.entries[i * n + t.rayColumn]!
    }
    dropRounding(ray)
    for (let j = 0; j < n; j++) ray[j]! *= program.scale[j]!
    makeLargestOne(ray)
    return isUnboundedRay(program, ray) ? unbounded : null
  }
}

function largestSize(values: Float64Array): number {
  let largest = 0
  for (let k = 0; k < values.length; k++) largest = Math.max(largest, Math.abs(values[k]!))
  return largest
}

/** Clears entries that are only rounding beside the largest; the proof shows if they were not. */
function dropRounding(weights: Float64Array): void {
  const noise = ROUNDING * largestSize(weights)
  for (let k = 0; k < weights.length; k++) if (Math.abs(weights[k]!) <= noise) weights[k] = 0
}

function makeLargestOne(weights: Float64Array): void {
  const largest = largestSize(weights)
  if (largest > 0) for (let k = 0; k < weights.length; k++) weights[k]! /= largest
}
