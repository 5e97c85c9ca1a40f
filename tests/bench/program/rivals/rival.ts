import type { LinearProgram } from '../../../../src/domain/lp/program'

/** A program some of whose variables may have to be 0 or 1. */
export interface MixedProgram extends LinearProgram {
  /** Numbers of the variables that are 0 or 1; none if left out. */
  readonly binary?: readonly number[]
}

/** What a solver says: an objective, that there is no solution, or nothing it should be asked for. */
export type Verdict = number | 'infeasible' | 'no answer'

/**
 * A rival's own form of one program, made outside the timed part. Changing it is cheap; `solve` is the
 * rival's documented call, and what it found is read afterwards.
 */
export interface RivalModel {
  setCost(cost: ArrayLike<number>): void
  setRow(row: number, lower: number, upper: number): void
  solve(): void
  /** What the last solve came to. */
  verdict(): Verdict
  /** The point of the last solve, where it found one. */
  point(): Float64Array
  /** Frees what the garbage collector does not. */
  dispose(): void
}

/** A solver of somebody else's. */
export interface Rival {
  readonly name: string
  prepare(program: MixedProgram): RivalModel
}

export const NOTHING_TO_FREE = (): void => undefined
