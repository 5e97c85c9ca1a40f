import type { LinearProgram } from '../program'

/** What a solver found. Only an optimal outcome carries a point; its objective is the least cost. */
export type ProgramOutcome =
  | { readonly status: 'optimal'; readonly point: readonly number[]; readonly objective: number }
  | { readonly status: 'infeasible' }
  | { readonly status: 'unbounded' }

/** The narrow interface behind which every solver stands. Throws only when it cannot answer at all. */
export type SolveProgram = (program: LinearProgram) => ProgramOutcome
