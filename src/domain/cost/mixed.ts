import type { Highs } from 'highs'
import type { LinearProgram } from '../lp/program'
import { modelData } from '../lp/solvers/highs'

/** A linear program some of whose variables take whole numbers only. */
export interface MixedProgram extends LinearProgram {
  /** Places of the variables that do. */
  readonly whole: ReadonlySet<number>
}

/** What a solver of such programs found. */
export type MixedOutcome =
  /** `proved` says whether nothing better exists, to within the gap asked for. */
  | { readonly status: 'found'; readonly point: readonly number[]; readonly proved: boolean }
  | { readonly status: 'infeasible' }
  /** Time ran out before any point was found. */
  | { readonly status: 'undecided' }

/** The narrow interface behind which the solver stands; `gap` is in the objective's unit. */
export type SolveMixed = (program: MixedProgram, gap: number, seconds: number) => MixedOutcome

/**
 * How far whole numbers may be off in HiGHS; they are rounded and checked anew. A tighter one loses answers:
 * where all prices are whole, HiGHS cuts off what is not a whole unit better to within this tolerance, and
 * at 1e-9 its own rounding puts an answer exactly one unit better beyond it.
 */
const WHOLE_TOLERANCE = 1e-6

/** How far a row may be off, in its own unit: far below any scale. */
const ROW_TOLERANCE = 1e-9

/** Makes a solver of mixed programs of a loaded HiGHS runtime (npm `highs`, WebAssembly, MIT). */
export function mixedHighs(highs: Highs): SolveMixed {
  return (program, gap, seconds) => {
    const { modelStatus } = highs.constants
    const model = {
      ...modelData(program),
      integrality: Array.from(program.cost, (_, at) => (program.whole.has(at) ? 1 : 0)),
    }
    return highs.withModel(model, (solver): MixedOutcome => {
      solver.options.set('output_flag', false)
      solver.options.set('mip_rel_gap', 0)
      solver.options.set('mip_abs_gap', gap)
      solver.options.set('mip_feasibility_tolerance', WHOLE_TOLERANCE)
      solver.options.set('primal_feasibility_tolerance', ROW_TOLERANCE)
      solver.options.set('time_limit', seconds)
      const { modelStatus: status } = solver.run()
      if (status === modelStatus.infeasible) return { status: 'infeasible' }
      if (status !== modelStatus.optimal && status !== modelStatus.timeLimit)
        throw new Error(`HiGHS stopped with model status ${status}`)
      const point = [...solver.getSolution().colValue]
      const some = point.length === program.cost.length && point.every(Number.isFinite)
      if (!some) return { status: 'undecided' }
      return { status: 'found', point, proved: status === modelStatus.optimal }
    })
  }
}
