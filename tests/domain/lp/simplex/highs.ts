import highsLoader, { type Highs, type OptionValue } from 'highs'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { modelData } from '../../../../src/domain/lp/solvers/highs'

/** What HiGHS makes of a program. */
export interface Reference {
  readonly status: 'optimal' | 'infeasible' | 'unbounded'
  readonly objective: number
}

/** Status codes of HiGHS that settle the matter. */
const SETTLED = new Map<number, Reference['status']>([
  [7, 'optimal'],
  [8, 'infeasible'],
  [10, 'unbounded'],
])

/**
 * Ways of asking, in order, until one gives a settled status. Presolve stays off: with it HiGHS
 * 1.15 calls some unbounded programs infeasible, and cannot tell the two apart in others.
 * Tolerances are the tightest it allows: at the usual 1e-7 its optimum of a blend with a range a
 * millionth wide is off by 1e-8.
 */
const WAYS: readonly Readonly<Record<string, OptionValue>>[] = [
  {},
  { simplex_strategy: 4 },
  { solver: 'ipm' },
]

const ALWAYS = {
  output_flag: false,
  presolve: 'off',
  primal_feasibility_tolerance: 1e-10,
  dual_feasibility_tolerance: 1e-10,
}

/** The solver the answers are compared with (HiGHS 1.15, Q. Huangfu, J.A.J. Hall 2018). */
export async function loadHighs(): Promise<(program: LinearProgram) => Reference> {
  const highs = await highsLoader()
  return (program) => {
    for (const way of WAYS) {
      const answer = ask(highs, program, way)
      if (answer !== null) return answer
    }
    throw new Error('HiGHS settled on no status in any of the ways asked')
  }
}

function ask(highs: Highs, program: LinearProgram, way: (typeof WAYS)[number]): Reference | null {
  return highs.withModel(modelData(program), (model) => {
    for (const [name, value] of Object.entries({ ...ALWAYS, ...way }))
      model.options.set(name, value)
    const status = SETTLED.get(model.run().modelStatus)
    return status === undefined ? null : { status, objective: model.getObjectiveValue() }
  })
}
