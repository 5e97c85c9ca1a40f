import solver, { type Model } from 'javascript-lp-solver'
import { namedModel, OBJECTIVE, setNamedCost, setNamedRow } from './named-model'
import { NOTHING_TO_FREE, type Rival } from './rival'

/** javascript-lp-solver: a model object given to `Solve`. It is only asked linear programs here. */
export function jslp({ name = 'javascript-lp-solver', lean = false } = {}): Rival {
  return {
    name,
    prepare(program) {
      const named = namedModel(program, lean)
      const { constraints, variables, names } = named
      const model: Model = { optimize: OBJECTIVE, opType: 'min', constraints, variables }
      let found: Readonly<Record<string, unknown>> = {}
      return {
        setCost: (cost) => setNamedCost(named, cost),
        setRow: (row, lower, upper) => setNamedRow(named, row, lower, upper),
        solve: () => (found = solver.Solve(model) as Record<string, unknown>),
        verdict() {
          if (found.feasible !== true) return 'infeasible'
          return found.bounded === false || typeof found.result !== 'number'
            ? 'no answer'
            : found.result
        },
        point: () => Float64Array.from(names, (one) => Number(found[one] ?? 0)),
        dispose: NOTHING_TO_FREE,
      }
    },
  }
}
