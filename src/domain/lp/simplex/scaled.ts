import { partsOf } from './block'
import { dot } from './kernel'
import {
  ProgramError,
  requireFinite,
  requireRange,
  type LinearProgram,
  type LinearRow,
} from '../program'
import { touchOf } from '../touching'
import { FEASIBILITY, ROUNDING } from './tolerances'

/** The power of two nearest, by logarithm, to the geometric middle of two sizes; 1 of nothing. */
function powerOfTwoBetween(least: number, most: number): number {
  const middle = Math.sqrt(least) * Math.sqrt(most)
  return middle > 0 && middle < Infinity ? 2 ** Math.round(Math.log2(middle)) : 1
}

/**
 * The program twice: as the caller gave it, which answers are checked against, and scaled, which
 * pivoting works on. Scaled coefficients are not stored: the tableau starts out as them.
 *
 * Layout. Variables have one numbering throughout this folder: 0 … n-1 are the caller's, n … n+m-1
 * are one *logical* per row, equal to the row's value, so a row's range is just the logical's
 * bounds and every row is the equation `coefficients · x - logical = 0`. Matrices are row by row.
 *
 * Scaling. `x = scale · x'` per variable, every scale a power of two, so scaling and unscaling
 * change exponents only and never round. One geometric pass over rows, then columns, brings the
 * entries near 1 (Maros 2003, section 7.2); costs are divided by `costScale` likewise.
 */
export class ScaledProgram {
  readonly columnCount: number
  rowCount: number
  private rowCapacity: number

  matrix: Float64Array
  readonly cost: Float64Array
  lower: Float64Array
  upper: Float64Array

  scale: Float64Array
  costScale = 1
  readonly scaledCost: Float64Array
  /** Scaled bounds, and the same moved outwards by the feasibility tolerance. */
  low: Float64Array
  high: Float64Array
  lowTolerated: Float64Array
  highTolerated: Float64Array
  /** Working lists of `chooseScales`; no meaning between calls. */
  private readonly columnLeast: Float64Array
  private readonly columnMost: Float64Array

  constructor(program: LinearProgram) {
    const n = program.cost.length
    const m = program.rows.length
    this.columnCount = n
    this.rowCount = m
    this.rowCapacity = m
    const part = partsOf(new Float64Array(4 * n + n * m + 7 * (n + m)))
    this.matrix = part(n * m)
    this.cost = part(n)
    this.scaledCost = part(n)
    this.columnLeast = part(n)
    this.columnMost = part(n)
    this.lower = part(n + m)
    this.upper = part(n + m)
    this.scale = part(n + m)
    this.low = part(n + m)
    this.high = part(n + m)
    this.lowTolerated = part(n + m)
    this.highTolerated = part(n + m)
    this.load(program)
  }

  /** Replaces all data by those of a program of the same shape. */
  load(program: LinearProgram): void {
    const n = this.columnCount
    requireFinite('cost', program.cost, n)
    if (
      program.rows.length !== this.rowCount ||
      program.lower.length !== n ||
      program.upper.length !== n
    ) {
      throw new ProgramError(
        `Program has ${program.rows.length} rows and ${program.lower.length}/${program.upper.length} bounds; ` +
          `this solver holds ${this.rowCount} rows and ${n} variables. Make a new solver for another shape.`,
      )
    }
    for (let i = 0; i < this.rowCount; i++) {
      const { coefficients } = program.rows[i]!
      requireFinite(`row ${i}`, coefficients, n)
      this.matrix.set(coefficients, i * n)
    }
    this.chooseScales()
    this.setCost(program.cost)
    for (let j = 0; j < n; j++) this.setBounds(j, program.lower[j]!, program.upper[j]!)
    for (let i = 0; i < this.rowCount; i++) {
      const { lower, upper } = program.rows[i]!
      this.setBounds(n + i, lower, upper)
    }
  }

  /**
   * Costs in the caller's units. One that in scaled units is only rounding beside the largest, as of
   * figures that should have cancelled, counts as none: no proof could tell what it decides.
   */
  setCost(cost: ArrayLike<number>): void {
    const n = this.columnCount
    requireFinite('cost', cost, n)
    let largest = 0
    for (let j = 0; j < n; j++) largest = Math.max(largest, Math.abs(cost[j]! * this.scale[j]!))
    this.costScale = powerOfTwoBetween(largest, largest)
    const noise = ROUNDING * largest
    for (let j = 0; j < n; j++) {
      const scaled = cost[j]! * this.scale[j]!
      this.cost[j] = Math.abs(scaled) <= noise ? 0 : cost[j]!
      this.scaledCost[j] = (this.cost[j]! * this.scale[j]!) / this.costScale
    }
  }

  /**
   * Bounds of a variable or logical in the caller's units. Bounds that cross by so little that they touch
   * are taken as equal.
   */
  setBounds(variable: number, lower: number, upper: number): void {
    requireRange(`variable ${variable}`, lower, upper)
    this.lower[variable] = lower
    this.upper[variable] = upper
    let low = lower / this.scale[variable]!
    let high = upper / this.scale[variable]!
    const slack = Math.max(
      FEASIBILITY * (1 + Math.abs(low)),
      touchOf(lower) / this.scale[variable]!,
    )
    if (low > high && low - high <= slack) low = high = (low + high) / 2
    this.setScaledBounds(variable, low, high)
  }

  /** Calls a function with all rows wider by what touches, for pivots and proofs alike. */
  withTouchingRows<T>(work: () => T): T {
    const { columnCount: n, rowCount: m } = this
    const lower = this.lower.slice(n, n + m)
    const upper = this.upper.slice(n, n + m)
    for (let i = 0; i < m; i++)
      this.setBounds(n + i, lower[i]! - touchOf(lower[i]!), upper[i]! + touchOf(upper[i]!))
    const result = work()
    for (let i = 0; i < m; i++) this.setBounds(n + i, lower[i]!, upper[i]!)
    return result
  }

  /** Widens the scaled ranges of all rows by a part of 1 + |bound|, until `restoreRows`. */
  widenRows(part: number): void {
    for (let v = this.columnCount; v < this.columnCount + this.rowCount; v++) {
      const low = this.low[v]!
      const high = this.high[v]!
      this.setScaledBounds(v, outwards(low, -part), outwards(high, part))
    }
  }

  /** Gives all rows back the ranges that the caller set. */
  restoreRows(): void {
    for (let v = this.columnCount; v < this.columnCount + this.rowCount; v++)
      this.setBounds(v, this.lower[v]!, this.upper[v]!)
  }

  private setScaledBounds(v: number, low: number, high: number): void {
    this.low[v] = low
    this.high[v] = high
    this.lowTolerated[v] = outwards(low, -FEASIBILITY)
    this.highTolerated[v] = outwards(high, FEASIBILITY)
  }

  /** The first variable whose bounds leave it no value, or -1. */
  firstCrossed(): number {
    const count = this.columnCount + this.rowCount
    for (let v = 0; v < count; v++) if (this.low[v]! > this.high[v]!) return v
    return -1
  }

  /** Appends a row and returns its index; arrays grow by half when full. */
  addRow(row: LinearRow): number {
    const n = this.columnCount
    const i = this.rowCount
    requireFinite(`row ${i}`, row.coefficients, n)
    if (i === this.rowCapacity) this.grow(Math.ceil(1.5 * i) + 1)
    this.rowCount = i + 1
    this.matrix.set(row.coefficients, i * n)
    this.scale[n + i] = 1
    this.scaleRow(i)
    this.setBounds(n + i, row.lower, row.upper)
    return i
  }

  /** Value of row i at x, both in the caller's units. */
  rowValue(row: number, x: Float64Array): number {
    return dot(this.matrix, row * this.columnCount, x, 0, this.columnCount)
  }

  /** Writes a row's scaled coefficients to the same place of a matrix with as many columns. */
  writeScaledRow(i: number, into: Float64Array): void {
    const { columnCount: n, matrix, scale } = this
    const inverse = 1 / scale[n + i]!
    for (let k = i * n, j = 0; j < n; j++, k++) into[k] = matrix[k]! * scale[j]! * inverse
  }

  private grow(rows: number): void {
    const n = this.columnCount
    this.rowCapacity = rows
    this.matrix = enlarged(this.matrix, n * rows)
    this.lower = enlarged(this.lower, n + rows)
    this.upper = enlarged(this.upper, n + rows)
    this.scale = enlarged(this.scale, n + rows)
    this.low = enlarged(this.low, n + rows)
    this.high = enlarged(this.high, n + rows)
    this.lowTolerated = enlarged(this.lowTolerated, n + rows)
    this.highTolerated = enlarged(this.highTolerated, n + rows)
  }

  private chooseScales(): void {
    const { columnCount: n, rowCount: m, matrix, scale, columnLeast, columnMost } = this
    scale.fill(1, 0, n)
    columnLeast.fill(Infinity)
    columnMost.fill(0)
    for (let i = 0; i < m; i++) {
      this.scaleRow(i)
      const inverse = 1 / scale[n + i]!
      for (let j = 0; j < n; j++) {
        const size = Math.abs(matrix[i * n + j]!) * inverse
        if (size === 0) continue
        if (size < columnLeast[j]!) columnLeast[j] = size
        if (size > columnMost[j]!) columnMost[j] = size
      }
    }
    for (let j = 0; j < n; j++) scale[j] = 1 / powerOfTwoBetween(columnLeast[j]!, columnMost[j]!)
  }

  /** Chooses the logical's scale from the row's entries at the present column scales. */
  private scaleRow(i: number): void {
    const { columnCount: n, matrix, scale } = this
    let least = Infinity
    let most = 0
    for (let j = 0; j < n; j++) {
      const size = Math.abs(matrix[i * n + j]! * scale[j]!)
      if (size === 0) continue
      if (size < least) least = size
      if (size > most) most = size
    }
    scale[n + i] = powerOfTwoBetween(least, most)
  }
}

/** A bound moved by a part of 1 + its size, signed so that it leads outwards: an infinite one stays. */
function outwards(bound: number, part: number): number {
  return bound + part * (1 + Math.abs(bound))
}

function enlarged(array: Float64Array, length: number): Float64Array {
  const larger = new Float64Array(length)
  larger.set(array)
  return larger
}
