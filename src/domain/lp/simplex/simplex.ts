import { Answer, type Infeasible, type Optimal, type Outcome } from './answer'
import { adoptBasis, rebuild } from './basis'
import { touchingGap } from './certificate'
import { dualSimplex, makeDualFeasible } from './dual'
import { primalSimplex } from './primal'
import type { LinearProgram, LinearRow } from '../program'
import { ScaledProgram } from './scaled'
import { Tableau } from './tableau'
import {
  DUAL_FEASIBILITY,
  FINE_DUAL_FEASIBILITY,
  LAST_WIDENING,
  PIVOTS_PER_LINE,
  REBUILD_AFTER,
} from './tolerances'

/** Thrown when rounding beat every attempt: a fault to report, never a statement on the program. */
export class AccuracyError extends Error {
  override readonly name = 'AccuracyError'
}

/** Something that has bounds. */
export interface BoundOwner {
  readonly kind: 'variable' | 'row'
  readonly index: number
}

type End = Outcome['status'] | 'stale' | 'capped'

/** Attempts at one program: as found; rebuilt from the data and finer; cold, by Bland's rule. */
const ATTEMPTS = 3

/**
 * A solver for one program and its many near relatives. Change costs, bounds or rows and solve
 * again: it goes on from the last basis, with the dual simplex if some limit is missed and then the
 * primal simplex if some cost can be bettered, so nothing need be said about what has changed.
 * Memory is allocated when it is made and when rows are added, never while solving.
 */
export class Simplex {
  /** For this folder: parametric passes and ranging read the final tableau. */
  readonly tableau: Tableau
  readonly program: ScaledProgram
  private answer: Answer
  private settled: Optimal | null = null

  constructor(program: LinearProgram) {
    this.program = new ScaledProgram(program)
    this.tableau = new Tableau(this.program)
    this.answer = new Answer(this.program)
  }

  /** Pivots made so far: for measuring. */
  get pivots(): number {
    return this.tableau.pivots
  }

  /** Takes in another program of the same shape; the next solve starts cold. */
  load(program: LinearProgram): void {
    this.settled = null
    this.program.load(program)
    this.tableau.reset()
  }

  /** Forgets the basis; the next solve starts cold. */
  reset(): void {
    this.settled = null
    this.tableau.reset()
  }

  setCost(cost: ArrayLike<number>): void {
    this.settled = null
    this.program.setCost(cost)
  }

  setVariableBounds(variable: number, lower: number, upper: number): void {
    this.setBounds(this.variableOf({ kind: 'variable', index: variable }), lower, upper)
  }

  setRowBounds(row: number, lower: number, upper: number): void {
    this.setBounds(this.variableOf({ kind: 'row', index: row }), lower, upper)
  }

  /** Number of a variable, or of a row's logical, in this folder's one numbering. */
  variableOf({ kind, index }: BoundOwner): number {
    const { columnCount, rowCount } = this.program
    const count = kind === 'row' ? rowCount : columnCount
    if (!Number.isInteger(index) || index < 0 || index >= count) {
      throw new RangeError(`There is no ${kind} ${index}; use 0 to ${count - 1}.`)
    }
    return kind === 'row' ? columnCount + index : index
  }

  /** As `setVariableBounds` and `setRowBounds`, by the number `variableOf` gives. */
  setBounds(variable: number, lower: number, upper: number): void {
    this.settled = null
    this.program.setBounds(variable, lower, upper)
  }

  /** The last answer if it is an optimum and nothing has changed since; throws otherwise. */
  requireOptimal(): Optimal {
    if (this.settled === null) {
      throw new Error('The program has changed or has no optimum: solve it to optimality first.')
    }
    return this.settled
  }

  /** Appends a row and returns its index; the basis is kept. To take a row out, free its bounds. */
  addRow(row: LinearRow): number {
    this.settled = null
    const index = this.program.addRow(row)
    this.tableau.appendRow()
    this.answer = new Answer(this.program)
    return index
  }

  /** The basis of the last solve, one byte per variable and row; for `restoreBasis`. */
  saveBasis(into = new Uint8Array(this.program.columnCount + this.program.rowCount)): Uint8Array {
    for (let v = 0; v < into.length; v++) into[v] = this.tableau.status[v] ?? 0
    return into
  }

  /** Goes back to a stored basis; rows added since become basic. */
  restoreBasis(statuses: Uint8Array): void {
    this.settled = null
    adoptBasis(this.tableau, statuses)
  }

  /**
   * Solves the program as it now stands. Where its limits only touch (`touching.ts`), the answer is that of
   * the program with as much room.
   */
  solve(): Outcome {
    const found = this.findOutcome()
    return this.settle(this.mayTouch(found) ? this.unlessTouching(found) : found)
  }

  /** The same without that room: limits that touch clash where that can be proved. */
  solveStrictly(): Outcome {
    return this.settle(this.findOutcome())
  }

  private settle(outcome: Outcome): Outcome {
    this.settled = outcome.status === 'optimal' ? outcome : null
    return outcome
  }

  private findOutcome(): Outcome {
    const crossed = this.program.firstCrossed()
    if (crossed >= 0) return this.answer.crossed(crossed)
    const { tableau: t } = this
    t.cautious = false
    t.dualTolerance = DUAL_FEASIBILITY
    if (t.age >= REBUILD_AFTER) rebuild(t)
    for (let attempt = 1; attempt <= ATTEMPTS; attempt++) {
      const outcome = this.prove(this.pivotToEnd())
      if (outcome !== null) return outcome
      t.cautious = attempt + 1 === ATTEMPTS
      t.dualTolerance = FINE_DUAL_FEASIBILITY
      if (t.cautious) t.reset()
      else rebuild(t)
    }
    const nearly = this.findNearly()
    if (nearly !== null) return nearly
    t.reset()
    throw new AccuracyError(
      `${ATTEMPTS} attempts at a program of ${this.program.columnCount} variables and ` +
        `${this.program.rowCount} rows ended without a proved answer. Its figures may span too ` +
        'many orders of magnitude: bring them nearer to one another.',
    )
  }

  /** Whether an outcome is a proved clash that as much room as touching limits have might undo. */
  mayTouch(outcome: Outcome): outcome is Infeasible {
    if (outcome.status !== 'infeasible' || outcome.crossed >= 0) return false
    return outcome.gap <= touchingGap(this.program, outcome.rowWeights)
  }

  /** A proved clash, or what the program comes to where its limits do no worse than touch. */
  private unlessTouching(clash: Infeasible): Outcome {
    const { rowWeights, columnWeights } = clash
    const kept = { rowWeights: rowWeights.slice(), columnWeights: columnWeights.slice() }
    for (const find of [() => this.findNearly(), () => this.findTouching()]) {
      const outcome = find()
      if (outcome !== null && outcome.status !== 'infeasible') return outcome
    }
    return { ...clash, ...kept }
  }

  /**
   * For a program that has no feasible point by less than can be proved, say 1e-10 of a limit: one that
   * misses its limits by no more than every answer may, and by the same proof the cheapest.
   */
  private findNearly(): Outcome | null {
    const { tableau: t, program } = this
    t.cautious = false
    t.reset()
    program.widenRows(LAST_WIDENING)
    const outcome = this.prove(this.pivotToEnd())
    program.restoreRows()
    return outcome
  }

  /** The outcome with room for limits that touch, proved with that room; null where none is. */
  private findTouching(): Outcome | null {
    const { tableau: t } = this
    t.cautious = false
    t.reset()
    return this.program.withTouchingRows(() => this.prove(this.pivotToEnd()))
  }

  /** Pivots until an end, rebuilding on the way whenever the tableau has gone stale. */
  private pivotToEnd(): End {
    const { tableau: t, program } = this
    t.pivotsLeft = PIVOTS_PER_LINE * (program.columnCount + program.rowCount)
    for (;;) {
      const end = this.pivotOnce()
      if (end !== 'stale') return end
      rebuild(t)
    }
  }

  /** One run of the dual and then the primal simplex from the basis at hand. */
  private pivotOnce(): End {
    const { tableau: t } = this
    t.refreshValues()
    t.refreshCosts()
    if (!t.isFeasible()) {
      makeDualFeasible(t)
      const end = dualSimplex(t)
      if (end !== 'feasible') return end
      if (t.costsShifted) t.refreshCosts()
    }
    return primalSimplex(t, t.reduced)
  }

  private prove(end: End): Outcome | null {
    switch (end) {
      case 'optimal':
        return this.answer.proveOptimal(this.tableau)
      case 'infeasible':
        return this.answer.proveInfeasible(this.tableau)
      case 'unbounded':
        return this.answer.proveUnbounded(this.tableau)
      case 'stale':
      case 'capped':
        return null
    }
  }
}
