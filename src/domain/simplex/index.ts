export type { Infeasible, Optimal, Outcome, Unbounded } from './answer'
export {
  parametricBounds,
  type BoundMove,
  type BoundPass,
  type BoundPoint,
} from './parametric-bounds'
export { parametricCost, type CostCorner, type CostPass } from './parametric-cost'
export { ProgramError, type LinearProgram, type LinearRow } from './program'
export { boundRange, costRange, type Interval } from './ranging'
export { AccuracyError, Simplex, type BoundOwner } from './simplex'
export { solveWithRules, type RuledBlend, type RuledOutcome, type SearchProgress } from './branch'
export { noRules, type BlendRules, type CountRule } from './rules'
