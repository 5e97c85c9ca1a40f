/*
 * A linear programming solver for thousands of small related programs: blends of some 50 oils
 * under a dozen ranges. Reading order:
 *
 *   program       what a program is           scaled           the same in balanced numbers
 *   tableau       the dictionary, pivoting    basis            storing, restoring, rebuilding
 *   tolerances    every tolerance, argued     kernel           the two inner loops
 *   dual          the dual simplex            dual-ratio       which variable enters, with flips
 *   primal        the primal simplex          certificate      proofs from the original data
 *   answer        outcomes, proved            simplex          the solver: change and solve again
 *   block         many arrays from one
 *
 * On top of it: `parametric-cost` (all corners between two costs), `parametric-bounds` (the cost
 * while limits move), `ranging` (how far prices hold), and for rules on which oils are used at all
 * `rules`, `rule-book`, `rule-cuts`, `split`, `open-nodes` and `branch`.
 */
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
