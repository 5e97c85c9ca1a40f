import type { Infeasible, Optimal, Unbounded } from './answer'
import { rebuild } from './basis'
import { primalSimplex, type PrimalEnd } from './primal'
import { AccuracyError, type Simplex } from './simplex'
import { AT_LOWER, AT_ZERO, type Tableau } from './tableau'
import { ANSWER_TOLERANCE, PIVOTS_PER_LINE } from './tolerances'

/** A vertex that is optimal for every weight from `from` to `to`. */
export interface CostCorner {
  readonly from: number
  readonly to: number
  readonly x: Float64Array
  /** Value of the first cost and of the second at x. */
  readonly first: number
  readonly second: number
}

/** All corners from weight 0 on; `unbounded` when the objective falls for ever beyond `reaches`. */
export interface CostPass {
  readonly status: 'complete' | 'unbounded'
  readonly reaches: number
  readonly corners: readonly CostCorner[]
}

/** Weight intervals shorter than this are rounding: the point lies on a face, not at a corner. */
const LEAST_INTERVAL = 1e-10

/** The longest stretch of weights that is stepped over where rounding turns the same columns for ever. */
const MOST_STEPPED_OVER = 1e-6

/**
 * Every extreme point of the trade-off between two costs, in one pass: minimises
 * (1 - w) · first + w · second for w from 0 to 1 and returns the corners met, each with the exact
 * interval of weights it is best for. Two neighbours share a weight at which both are best.
 *
 * From the optimum at w, the reduced costs d + (w' - w) · g say at which w' the next column turns;
 * there the corner is left for the end of the optimal face in direction g, by the primal simplex
 * held to that face. So ties are passed through at once, and both ends are lexicographic optima:
 * the first corner has the least second cost among the best by the first, and the last the reverse.
 *
 * Source: S. Gass, T. Saaty, Naval Research Logistics Quarterly 2 (1955) 39-45; M. Ehrgott,
 * Multicriteria Optimization (2nd ed. 2005), chapter 6.
 *
 * Afterwards the solver's cost is a mixture of the two: set a cost before solving on.
 */
export function parametricCost(
  simplex: Simplex,
  first: ArrayLike<number>,
  second: ArrayLike<number>,
): CostPass | Infeasible | Unbounded {
  simplex.setCost(first)
  const start = simplex.solve()
  if (start.status !== 'optimal') return start
  const { tableau: t } = simplex
  const pass = new Mixture(simplex, first, second)
  const corners: CostCorner[] = []
  let weight = 0
  let idle = 0
  let leap = LEAST_INTERVAL
  for (;;) {
    if (pass.settle(weight) === 'unbounded')
      return { status: 'unbounded', reaches: weight, corners }
    const turn = weight + stepToTurn(t)
    const next = turn < 1 - LEAST_INTERVAL ? turn : 1
    const isCorner = next - weight > LEAST_INTERVAL
    if (isCorner) addCorner(corners, pass.corner(weight, next))
    if (next === 1) return { status: 'complete', reaches: 1, corners }
    weight = next
    // Each turn takes a column to its other side: more of them than there are at one weight is rounding.
    idle = isCorner ? 0 : idle + 1
    if (idle <= t.columns.length + t.program.rowCount) continue
    if (leap > MOST_STEPPED_OVER)
      throw new AccuracyError(`Parametric pass does not get beyond weight ${weight}.`)
    weight = Math.min(1, weight + leap)
    leap *= 2
    idle = 0
  }
}

/** The mixed cost and its tableau rows. */
class Mixture {
  private readonly mixed: Float64Array
  private readonly scaled: Float64Array
  /** Change of the scaled mixed cost with the weight. */
  private readonly difference: Float64Array
  /** Scale of each variable over the size of the larger cost. */
  private readonly factors: Float64Array

  constructor(
    private readonly simplex: Simplex,
    private readonly first: ArrayLike<number>,
    private readonly second: ArrayLike<number>,
  ) {
    const n = first.length
    const { scale } = simplex.program
    this.mixed = new Float64Array(n)
    this.scaled = new Float64Array(n)
    let size = 0
    for (let j = 0; j < n; j++) {
      size = Math.max(size, Math.max(Math.abs(first[j]!), Math.abs(second[j]!)) * scale[j]!)
    }
    this.factors = new Float64Array(n)
    this.difference = new Float64Array(n)
    for (let j = 0; j < n; j++) {
      this.factors[j] = size > 0 ? scale[j]! / size : 1
      this.difference[j] = (second[j]! - first[j]!) * this.factors[j]!
    }
  }

  private setWeight(weight: number): void {
    for (let j = 0; j < this.mixed.length; j++) {
      this.mixed[j] = (1 - weight) * this.first[j]! + weight * this.second[j]!
    }
  }

  /**
   * Writes the mixed cost at `weight` and its change with the weight into the tableau's two
   * objective rows, both divided by the size of the larger cost.
   */
  private express(weight: number): void {
    const { tableau: t } = this.simplex
    this.setWeight(weight)
    for (let j = 0; j < this.mixed.length; j++) this.scaled[j] = this.mixed[j]! * this.factors[j]!
    t.express(this.scaled, t.reduced)
    t.express(this.difference, t.direction)
  }

  /** Goes to the vertex that is best just beyond `weight`. */
  settle(weight: number): 'settled' | 'unbounded' {
    const { tableau: t, program } = this.simplex
    t.carriesDirection = true
    t.pivotsLeft = PIVOTS_PER_LINE * (program.columnCount + program.rowCount)
    for (;;) {
      this.express(weight)
      const end = this.alongFace(t)
      if (end === 'stale') {
        rebuild(t)
        t.refreshValues()
        continue
      }
      t.carriesDirection = false
      if (end === 'capped')
        throw new AccuracyError(`Parametric pass did not end at weight ${weight}.`)
      return end === 'unbounded' ? 'unbounded' : 'settled'
    }
  }

  private alongFace(t: Tableau): PrimalEnd {
    const end = primalSimplex(t, t.reduced)
    return end === 'optimal' ? primalSimplex(t, t.direction, t.reduced) : end
  }

  /** The corner of an interval of weights, proved optimal at its middle. */
  corner(from: number, to: number): CostCorner {
    this.setWeight((from + to) / 2)
    this.simplex.setCost(this.mixed)
    const outcome = this.simplex.solve()
    if (outcome.status !== 'optimal') {
      throw new AccuracyError(`Parametric pass met ${outcome.status} at weight ${(from + to) / 2}.`)
    }
    return { from, to, ...this.images(outcome) }
  }

  private images({ x }: Optimal): Omit<CostCorner, 'from' | 'to'> {
    let first = 0
    let second = 0
    for (let j = 0; j < x.length; j++) {
      first += this.first[j]! * x[j]!
      second += this.second[j]! * x[j]!
    }
    return { x: x.slice(), first, second }
  }
}

/** Increase of the weight at which the first reduced cost turns to the wrong sign. */
function stepToTurn(t: Tableau): number {
  const { low, high } = t.program
  let step = Infinity
  for (let j = 0; j < t.columns.length; j++) {
    const v = t.columns[j]!
    if (low[v] === high[v] || t.status[v] === AT_ZERO) continue
    const side = t.status[v] === AT_LOWER ? 1 : -1
    const fall = -side * t.direction[j]!
    if (fall > t.dualTolerance) step = Math.min(step, Math.max(0, side * t.reduced[j]!) / fall)
  }
  return step
}

/** Appends a corner where the last one ended, or lengthens that if its image is the same. */
function addCorner(corners: CostCorner[], corner: CostCorner): void {
  const last = corners.at(-1)
  if (last && isClose(last.first, corner.first) && isClose(last.second, corner.second)) {
    corners[corners.length - 1] = { ...last, to: corner.to }
  } else corners.push({ ...corner, from: last?.to ?? 0 })
}

function isClose(a: number, b: number): boolean {
  return Math.abs(a - b) <= ANSWER_TOLERANCE * Math.max(1, Math.abs(a), Math.abs(b))
}
