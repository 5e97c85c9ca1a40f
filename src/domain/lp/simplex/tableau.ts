import { partsOf } from './block'
import { addMultiple } from './kernel'
import type { ScaledProgram } from './scaled'
import { DUAL_FEASIBILITY } from './tolerances'

/** Where a variable stands; one byte each makes up a stored basis. */
export const BASIC = 0
export const AT_LOWER = 1
export const AT_UPPER = 2
/** Nonbasic without any bound, resting at 0. */
export const AT_ZERO = 3

/**
 * The dictionary of the simplex method: every basic variable written in the nonbasic ones,
 *
 *     x[heads[i]] = Σ_j entries[i·n + j] · x[columns[j]]            for each row i
 *     objective   = Σ_j reduced[j] · x[columns[j]]
 *
 * There is no constant term, because every row of the program is `coefficients · x - logical = 0`
 * (see `ScaledProgram`): limits live in the bounds, not in the equations. At the start the logicals
 * are basic and `entries` is the scaled matrix; exchanging a basic variable with a nonbasic
 * one (`pivot`) is all that ever happens to it. Only m × n numbers are kept: columns of basic
 * variables would be unit vectors. At 12 × 50 it is 5 kB and fits a level-1 cache, where a full
 * tableau beats any factorisation; the price is m·n multiply-adds a pivot.
 *
 * Source: G.B. Dantzig, Linear Programming and Extensions (1963); the dictionary form after
 * V. Chvátal, Linear Programming (1983), and R.J. Vanderbei, Linear Programming.
 */
export class Tableau {
  entries: Float64Array
  /** Basic variable of each row, nonbasic variable of each column, and either's place by variable. */
  heads: Int32Array
  readonly columns: Int32Array
  places: Int32Array
  status: Uint8Array
  /** Present scaled value of every variable, basic or not. */
  value: Float64Array

  /** Objective in the nonbasic variables: the reduced costs, by column. */
  readonly reduced: Float64Array
  /** A second objective carried along in parametric passes, by column. */
  readonly direction: Float64Array
  carriesDirection = false

  /** Pivots since the last rebuild from the data. */
  age = 0
  /** Pivots still allowed in this attempt. */
  pivotsLeft = 0
  /** Pivots since the tableau was made: for measuring. */
  pivots = 0
  /** Reduced costs no longer belong to the true cost: recompute before trusting them. */
  costsShifted = false
  /** How far a reduced cost may have the wrong sign while pivoting. */
  dualTolerance = DUAL_FEASIBILITY
  /** Bland's rule from the first step: slow but it cannot cycle. */
  cautious = false

  /** Working lists of the dual ratio test (see `dual-ratio.ts`); no meaning between calls. */
  readonly candidates: Int32Array
  readonly ratios: Float64Array
  readonly sizes: Float64Array
  /** Row and side (+1 below its range, -1 above) that proved infeasibility. */
  rayRow = -1
  raySide = 0
  /** Column and way (+1 up, -1 down) of an unbounded ray. */
  rayColumn = -1

  constructor(readonly program: ScaledProgram) {
    const n = program.columnCount
    const m = program.rowCount
    const part = partsOf(new Float64Array(n * m + 4 * n + (n + m)))
    this.entries = part(n * m)
    this.reduced = part(n)
    this.direction = part(n)
    this.ratios = part(n)
    this.sizes = part(n)
    this.value = part(n + m)
    const indices = partsOf(new Int32Array(2 * n + m + (n + m)))
    this.heads = indices(m)
    this.columns = indices(n)
    this.places = indices(n + m)
    this.candidates = indices(n)
    this.status = new Uint8Array(n + m)
    this.reset()
  }

  /** Back to the all-logical basis, every variable nonbasic at its lower bound where it has one. */
  reset(): void {
    const { columnCount: n, rowCount: m, low } = this.program
    this.restart()
    for (let j = 0; j < n; j++) this.status[j] = low[j] === -Infinity ? AT_UPPER : AT_LOWER
    for (let i = 0; i < m; i++) this.status[n + i] = BASIC
  }

  /** Entries, heads and columns of the all-logical basis; statuses are left alone. */
  restart(): void {
    const { columnCount: n, rowCount: m } = this.program
    for (let j = 0; j < n; j++) this.columns[j] = this.places[j] = j
    for (let i = 0; i < m; i++) {
      this.program.writeScaledRow(i, this.entries)
      this.heads[i] = n + i
      this.places[n + i] = i
    }
    this.age = 0
  }

  /** Takes in the row just appended to the program, its logical basic. */
  appendRow(): void {
    const { columnCount: n, rowCount: m } = this.program
    const row = m - 1
    if (this.heads.length < m) this.grow()
    const { entries, heads, columns, sizes } = this
    this.program.writeScaledRow(row, entries)
    const own = sizes // coefficients by variable, where the tableau's row is by column
    for (let j = 0; j < n; j++) own[j] = entries[row * n + j]!
    for (let j = 0; j < n; j++) entries[row * n + j] = columns[j]! < n ? own[columns[j]!]! : 0
    for (let i = 0; i < row; i++) {
      const factor = heads[i]! < n ? own[heads[i]!]! : 0
      if (factor !== 0) addMultiple(entries, row * n, factor, entries, i * n, n)
    }
    heads[row] = n + row
    this.places[n + row] = row
    this.status[n + row] = BASIC
  }

  private grow(): void {
    const n = this.columns.length
    const rows = this.program.matrix.length / n
    this.entries = copied(this.entries, new Float64Array(n * rows))
    this.value = copied(this.value, new Float64Array(n + rows))
    this.heads = copied(this.heads, new Int32Array(rows))
    this.places = copied(this.places, new Int32Array(n + rows))
    this.status = copied(this.status, new Uint8Array(n + rows))
  }

  /**
   * Exchanges the basic variable of `row` with the nonbasic one of `column`. Solving the row for
   * the entering variable divides it by minus the pivot; putting that into the other rows and the
   * objectives adds multiples of it. Values and statuses are the caller's business.
   */
  pivot(row: number, column: number): void {
    const { entries } = this
    const { columnCount: n, rowCount: m } = this.program
    const start = row * n
    const inverse = 1 / entries[start + column]!
    for (let j = 0; j < n; j++) entries[start + j]! *= -inverse
    entries[start + column] = inverse
    for (let i = 0; i < m; i++) {
      const factor = entries[i * n + column]!
      if (i === row || factor === 0) continue
      entries[i * n + column] = 0
      addMultiple(entries, i * n, factor, entries, start, n)
    }
    this.pivotObjective(this.reduced, start, column)
    if (this.carriesDirection) this.pivotObjective(this.direction, start, column)

    const leaving = this.heads[row]!
    const entering = this.columns[column]!
    this.heads[row] = entering
    this.columns[column] = leaving
    this.places[entering] = row
    this.places[leaving] = column
    this.age++
    this.pivots++
  }

  private pivotObjective(objective: Float64Array, start: number, column: number): void {
    const factor = objective[column]!
    if (factor === 0) return
    objective[column] = 0
    addMultiple(objective, 0, factor, this.entries, start, this.columns.length)
  }

  /** Moves a nonbasic variable by `step` and every basic variable with it. */
  move(column: number, step: number): void {
    const { entries, heads, value } = this
    const n = this.columns.length
    const m = this.program.rowCount
    value[this.columns[column]!]! += step
    for (let i = 0; i < m; i++) value[heads[i]!]! += entries[i * n + column]! * step
  }

  /** Moves a nonbasic variable to its other bound. */
  flip(column: number): void {
    const v = this.columns[column]!
    const { low, high } = this.program
    const up = this.status[v] === AT_LOWER
    this.move(column, up ? high[v]! - low[v]! : low[v]! - high[v]!)
    this.status[v] = up ? AT_UPPER : AT_LOWER
    this.value[v] = up ? high[v]! : low[v]!
  }

  /** Puts nonbasic variables on the bounds their statuses name and recomputes the basic ones. */
  refreshValues(): void {
    const { heads, columns, value } = this
    const n = columns.length
    const m = this.program.rowCount
    for (let i = 0; i < m; i++) value[heads[i]!] = 0
    for (let j = 0; j < n; j++) {
      const v = columns[j]!
      this.rest(v)
      const target = value[v]!
      value[v] = 0
      if (target !== 0) this.move(j, target)
    }
  }

  /** Rests a nonbasic variable on its bound; one whose bound has gone moves to another it has. */
  private rest(v: number): void {
    const { low, high } = this.program
    let status = this.status[v]!
    if (status !== AT_UPPER && low[v] !== -Infinity) status = AT_LOWER
    else if (high[v] !== Infinity) status = AT_UPPER
    else status = low[v] === -Infinity ? AT_ZERO : AT_LOWER
    this.status[v] = status
    this.value[v] = status === AT_LOWER ? low[v]! : status === AT_UPPER ? high[v]! : 0
  }

  /** Writes an objective over all variables (0 for logicals) in the nonbasic ones, by column. */
  express(cost: Float64Array, reduced: Float64Array): void {
    const { heads, columns } = this
    const n = columns.length
    const m = this.program.rowCount
    for (let j = 0; j < n; j++) reduced[j] = columns[j]! < n ? cost[columns[j]!]! : 0
    for (let i = 0; i < m; i++) {
      const factor = heads[i]! < n ? cost[heads[i]!]! : 0
      if (factor !== 0) addMultiple(reduced, 0, factor, this.entries, i * n, n)
    }
  }

  /** Reduced costs of the true cost. */
  refreshCosts(): void {
    this.express(this.program.scaledCost, this.reduced)
    this.costsShifted = false
  }

  /** No basic variable is outside its bounds by more than the tolerance. */
  isFeasible(): boolean {
    const { heads, value } = this
    const { lowTolerated, highTolerated, rowCount: m } = this.program
    for (let i = 0; i < m; i++) {
      const v = heads[i]!
      if (value[v]! < lowTolerated[v]! || value[v]! > highTolerated[v]!) return false
    }
    return true
  }
}

function copied<T extends Float64Array | Int32Array | Uint8Array>(from: T, into: T): T {
  into.set(from)
  return into
}
