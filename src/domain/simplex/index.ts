export type { Infeasible, Optimal, Outcome, Unbounded } from './answer'
export { ProgramError, type LinearProgram, type LinearRow } from './program'
export { AccuracyError, Simplex } from './simplex'
