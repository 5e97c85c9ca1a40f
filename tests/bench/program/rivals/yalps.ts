import { type Options, type Solution, solve } from 'yalps'
import { namedModel, OBJECTIVE, setNamedCost, setNamedRow } from './named-model'
import { NOTHING_TO_FREE, type Rival } from './rival'

/** YALPS: a model object given to `solve`, its default options, and with 0-1 variables a time limit. */
export function yalps({ name = 'yalps', lean = false, timeoutMs = Infinity } = {}): Rival {
  const options: Options = { timeout: timeoutMs }
  return {
    name,
    prepare(program) {
      const named = namedModel(program, lean)
      const model = {
        direction: 'minimize' as const,
        objective: OBJECTIVE,
        constraints: named.constraints,
        variables: named.variables,
        binaries: new Set(program.binary?.map((j) => named.names[j] ?? '')),
      }
      let found: Solution | undefined
      return {
        setCost: (cost) => setNamedCost(named, cost),
        setRow: (row, lower, upper) => setNamedRow(named, row, lower, upper),
        solve: () => (found = solve(model, options)),
        verdict() {
          if (found?.status === 'optimal') return found.result
          return found?.status === 'infeasible' ? 'infeasible' : 'no answer'
        },
        point() {
          const values = new Map(found?.variables)
          return Float64Array.from(named.names, (one) => values.get(one) ?? 0)
        },
        dispose: NOTHING_TO_FREE,
      }
    },
  }
}
