import type { Infeasible, Outcome, Unbounded } from './answer'
import { enter } from './dual'
import { singleStep } from './dual-ratio'
import { ProgramError } from '../program'
import { AccuracyError, type BoundOwner, type Simplex } from './simplex'
import { AT_LOWER, AT_UPPER } from './tableau'
import { PATIENCE_PER_ROW, PIVOT_ZERO, PIVOTS_PER_LINE } from './tolerances'

/** A row or variable with the bounds it has at the end of the pass. */
export interface BoundMove extends BoundOwner {
  readonly lower: number
  readonly upper: number
}

/** An optimum at which the optimal cost may bend; between two of them x and cost are linear. */
export interface BoundPoint {
  /** Part of the way from the present bounds (0) to the moved ones (1). */
  readonly at: number
  readonly objective: number
  readonly x: Float64Array
  readonly rowValues: Float64Array
}

/** The points from 0 on; `infeasible` when nothing obeys the bounds beyond `reaches`. */
export interface BoundPass {
  readonly status: 'complete' | 'infeasible'
  readonly reaches: number
  readonly points: readonly BoundPoint[]
}

/** Parts of the way shorter than this are rounding: the bound is met already. */
const LEAST_STEP = 1e-10

/**
 * The optimal cost while bounds move evenly from where they are to where `moves` says: a convex,
 * piecewise linear curve, returned by its bends. Its slope is the price of the move: the answer
 * to "what does one more point of this measure cost, and how far does that price hold".
 *
 * The twin of the parametric objective. Reduced costs do not change, so the basis stays optimal
 * until a basic variable meets a bound; there it leaves by a dual simplex step of length zero, for
 * the basis that is feasible beyond. If no column can take its place, nothing is feasible beyond.
 *
 * Source: T. Gal, Postoptimal Analyses, Parametric Programming, and Related Topics (2nd ed. 1995).
 *
 * Afterwards the bounds stand where the pass ended. A bound must stay finite or stay infinite.
 */
export function parametricBounds(
  simplex: Simplex,
  moves: readonly BoundMove[],
): BoundPass | Infeasible | Unbounded {
  const path = new Path(simplex, moves)
  const points: BoundPoint[] = []
  for (let at = 0; ;) {
    const outcome = path.solveAt(at)
    if (outcome.status !== 'optimal') {
      if (at === 0) return outcome
      throw new AccuracyError(`Parametric pass met ${outcome.status} at ${at} of the way.`)
    }
    const { objective, x, rowValues } = outcome
    points.push({ at, objective, x: x.slice(), rowValues: rowValues.slice() })
    if (at === 1) return { status: 'complete', reaches: 1, points }
    const step = path.passBend()
    if (step === 0) return { status: 'infeasible', reaches: at, points }
    at = Math.min(1, at + step)
  }
}

/** The moving bounds, and how fast every variable follows them in the present basis. */
class Path {
  private readonly variables: number[]
  private readonly starts: { lower: number; upper: number }[]
  /** Per unit of the way, in scaled units, by variable. */
  private readonly lowSpeed: Float64Array
  private readonly highSpeed: Float64Array
  private readonly speed: Float64Array
  /** Row whose basic variable meets a bound first, and the side it leaves on; -1: bounds cross. */
  private row = -1
  private side = 0

  constructor(
    private readonly simplex: Simplex,
    private readonly moves: readonly BoundMove[],
  ) {
    const { columnCount, rowCount, lower, upper, scale } = simplex.program
    this.lowSpeed = new Float64Array(columnCount + rowCount)
    this.highSpeed = new Float64Array(columnCount + rowCount)
    this.speed = new Float64Array(columnCount + rowCount)
    this.variables = moves.map((move) => simplex.variableOf(move))
    this.starts = this.variables.map((v) => ({ lower: lower[v]!, upper: upper[v]! }))
    moves.forEach((move, k) => {
      const v = this.variables[k]!
      const start = this.starts[k]!
      this.lowSpeed[v] = distance(move, start.lower, move.lower) / scale[v]!
      this.highSpeed[v] = distance(move, start.upper, move.upper) / scale[v]!
    })
  }

  solveAt(at: number): Outcome {
    this.moves.forEach((move, k) => {
      const { lower, upper } = this.starts[k]!
      this.simplex.setBounds(
        this.variables[k]!,
        between(lower, move.lower, at),
        between(upper, move.upper, at),
      )
    })
    return this.simplex.solve()
  }

  /** Pivots to a basis that is feasible beyond here; how far it is, or 0 if there is none. */
  passBend(): number {
    const { tableau: t, program } = this.simplex
    const patience = PATIENCE_PER_ROW * program.rowCount
    const cap = PIVOTS_PER_LINE * (program.columnCount + program.rowCount)
    for (let pivots = 0; pivots < cap; pivots++) {
      this.measureSpeeds()
      const cautious = pivots > patience
      const step = this.stepToBound(cautious)
      if (step > LEAST_STEP) return step
      const column = this.row < 0 ? -1 : singleStep(t, this.row, this.side, cautious)
      if (column < 0) return 0
      enter(t, this.row, column, this.side)
    }
    throw new AccuracyError(`Parametric pass made ${cap} pivots at one point without an end.`)
  }

  private measureSpeeds(): void {
    const { tableau: t, program } = this.simplex
    const { columnCount: n, rowCount: m } = program
    for (let j = 0; j < n; j++) {
      const v = t.columns[j]!
      const status = t.status[v]!
      const speed = status === AT_LOWER ? this.lowSpeed : this.highSpeed
      this.speed[v] = status === AT_LOWER || status === AT_UPPER ? speed[v]! : 0
    }
    for (let i = 0; i < m; i++) {
      let sum = 0
      for (let j = 0; j < n; j++) sum += t.entries[i * n + j]! * this.speed[t.columns[j]!]!
      this.speed[t.heads[i]!] = sum
    }
  }

  /** Way until the first basic variable passes a bound or two bounds cross; notes which. */
  private stepToBound(cautious: boolean): number {
    const { tableau: t, program } = this.simplex
    let least = this.stepToCrossing()
    this.row = -1
    for (let i = 0; i < program.rowCount; i++) {
      const v = t.heads[i]!
      const side = this.speed[v]! < this.lowSpeed[v]! ? 1 : -1
      const bound = side > 0 ? program.low[v]! : program.high[v]!
      const boundSpeed = side > 0 ? this.lowSpeed[v]! : this.highSpeed[v]!
      const closing = side * (boundSpeed - this.speed[v]!)
      if (closing <= PIVOT_ZERO || Math.abs(bound) === Infinity) continue
      const way = (side * (t.value[v]! - bound)) / closing
      const step = way <= LEAST_STEP ? 0 : way
      const wins = cautious && this.row >= 0 && v < t.heads[this.row]!
      if (step < least || (step === least && wins)) {
        least = step
        this.row = i
        this.side = side
      }
    }
    return least
  }

  private stepToCrossing(): number {
    const { low, high } = this.simplex.program
    let least = Infinity
    for (const v of this.variables) {
      const closing = this.lowSpeed[v]! - this.highSpeed[v]!
      if (closing > 0) least = Math.min(least, Math.max(0, high[v]! - low[v]!) / closing)
    }
    return least
  }
}

function between(start: number, end: number, at: number): number {
  return start === end ? start : (1 - at) * start + at * end
}

function distance(owner: BoundOwner, start: number, end: number): number {
  if (start === end) return 0
  if (Number.isFinite(start) && Number.isFinite(end)) return end - start
  throw new ProgramError(
    `A bound of ${owner.kind} ${owner.index} goes from ${start} to ${end}; move between finite ` +
      'numbers, or leave it infinite.',
  )
}
