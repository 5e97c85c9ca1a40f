import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import type { Outcome } from '../../../../src/domain/lp/simplex/answer'
import type { Reference } from './highs'
import { faultsOfInfeasibility, faultsOfOptimum, faultsOfRay } from './proofs'

/** How many programs ended in each way. */
export type Tally = Record<Outcome['status'], number>

/** Largest relative difference of two optima that is put down to rounding. */
const RELATIVE = 1e-9

/** Solves a program here and with the reference; what they disagree on, and proofs that fail. */
export function disagreements(
  program: LinearProgram,
  reference: (program: LinearProgram) => Reference,
): { status: Outcome['status']; faults: string[] } {
  const outcome = new Simplex(program).solve()
  const truth = reference(program)
  const faults = faultsOf(program, outcome)
  if (outcome.status !== truth.status) faults.push(`${outcome.status}, reference ${truth.status}`)
  else if (outcome.status === 'optimal') {
    const gap = Math.abs(outcome.objective - truth.objective)
    if (!(gap <= RELATIVE * Math.max(1, Math.abs(truth.objective)))) {
      faults.push(`optimum ${outcome.objective}, reference ${truth.objective}`)
    }
  }
  return { status: outcome.status, faults }
}

/** Faults of whichever proof the outcome carries. */
export function faultsOf(program: LinearProgram, outcome: Outcome): string[] {
  switch (outcome.status) {
    case 'optimal':
      return faultsOfOptimum(program, outcome)
    case 'infeasible':
      return faultsOfInfeasibility(program, outcome)
    case 'unbounded':
      return faultsOfRay(program, outcome)
  }
}
