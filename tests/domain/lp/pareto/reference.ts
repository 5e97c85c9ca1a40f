import loadHighs from 'highs'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { modelData } from '../../../../src/domain/lp/solvers/highs'
import { loadHighs as loadColdHighs } from '../simplex/highs'

const highs = await loadHighs()
const coldHighs = await loadColdHighs()

/** HiGHS's status code for a proved optimum. */
const OPTIMAL = 7
/** Its tightest tolerances: at the usual 1e-7 its optimum of a narrow blend is off by 1e-8. */
const OPTIONS = {
  output_flag: false,
  presolve: 'off',
  primal_feasibility_tolerance: 1e-10,
  dual_feasibility_tolerance: 1e-10,
}

/**
 * The least of each of many costs over one program, by HiGHS: one model, only its cost changed. Going on
 * from basis to basis HiGHS 1.15 at times gives up; then it is asked from scratch.
 */
export function leastOfEach(program: LinearProgram, costs: readonly Float64Array[]): number[] {
  return highs.withModel(modelData(program), (model) => {
    for (const [name, value] of Object.entries(OPTIONS)) model.options.set(name, value)
    const all = { kind: 'range', from: 0, to: program.cost.length - 1 } as const
    return costs.map((cost) => {
      model.changeColsCost(all, cost)
      const settled = model.run().modelStatus === OPTIMAL
      return settled ? model.getObjectiveValue() : leastFromScratch(program, cost)
    })
  })
}

/** The least of a cost by HiGHS, from scratch. */
export function leastFromScratch(program: LinearProgram, cost: Float64Array): number {
  const { status, objective } = coldHighs({ ...program, cost })
  if (status !== 'optimal') throw new Error(`HiGHS calls a program with an optimum ${status}`)
  return objective
}
