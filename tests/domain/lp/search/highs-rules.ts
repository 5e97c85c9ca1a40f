import type { Highs } from 'highs'
import type { BlendRules } from '../../../../src/domain/lp/search/rules'
import type { LinearProgram, LinearRow } from '../../../../src/domain/lp/program'
import { modelData } from '../../../../src/domain/lp/solvers/highs'

/** Search to the end: HiGHS would stop at a gap of 1e-4. */
const TO_THE_END = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 0,
  mip_feasibility_tolerance: 1e-9,
}
const OPTIMAL = 7
const INFEASIBLE = 8

/** The cheapest cost under the rules, if any blend obeys them. */
export type RuledTruth = { status: 'optimal'; objective: number } | { status: 'infeasible' }

/** What HiGHS makes of a program with rules, written with a 0-1 variable of use for each oil. */
export function highsWithRules(
  highs: Highs,
  program: LinearProgram,
  rules: BlendRules,
): RuledTruth {
  const n = program.cost.length
  const model = {
    ...modelData(withUses(program, rules)),
    integrality: Array.from({ length: 2 * n }, (_, j) => (j >= n || rules.step > 0 ? 1 : 0)),
  }
  return highs.withModel(model, (solver): RuledTruth => {
    for (const [name, value] of Object.entries(TO_THE_END)) solver.options.set(name, value)
    const status = solver.run().modelStatus
    if (status === INFEASIBLE) return { status: 'infeasible' }
    if (status !== OPTIMAL) throw new Error(`HiGHS ended with status ${status}`)
    return { status: 'optimal', objective: solver.getObjectiveValue() }
  })
}

/** Variables x, or x / step, then y: least · y ≤ x ≤ upper · y, and the rules as rows over y. */
function withUses(
  program: LinearProgram,
  { leastUse, counts, requires, step }: BlendRules,
): LinearProgram {
  const n = program.cost.length
  const unit = step > 0 ? step : 1
  const scaled = (values: ArrayLike<number>): number[] =>
    Array.from(values, (value) => value * unit)
  const overUses = (weights: ReadonlyMap<number, number>): number[] => [
    ...Array<number>(n).fill(0),
    ...Array.from({ length: n }, (_, j) => weights.get(j) ?? 0),
  ]
  const rows: LinearRow[] = program.rows.map((row) => ({
    ...row,
    coefficients: [...scaled(row.coefficients), ...Array<number>(n).fill(0)],
  }))
  const link = (j: number, limit: number, lower: number, upper: number): void => {
    const coefficients = Array<number>(2 * n).fill(0)
    coefficients[j] = unit
    coefficients[n + j] = -limit
    rows.push({ coefficients, lower, upper })
  }
  for (let j = 0; j < n; j++) {
    link(j, program.upper[j] ?? NaN, -Infinity, 0)
    link(j, Math.max(leastUse[j] ?? NaN, step), 0, Infinity)
  }
  for (const { variables, least, most } of counts) {
    const weights = new Map(variables.map((j) => [j, 1]))
    rows.push({ coefficients: overUses(weights), lower: least, upper: most })
  }
  for (const [variable, needed] of requires) {
    if (variable === needed) continue
    const weights = new Map([
      [variable, -1],
      [needed, 1],
    ])
    rows.push({ coefficients: overUses(weights), lower: 0, upper: Infinity })
  }
  return {
    cost: [...scaled(program.cost), ...Array<number>(n).fill(0)],
    lower: [...Array.from(program.lower, (value) => value / unit), ...Array<number>(n).fill(0)],
    upper: [...Array.from(program.upper, (value) => value / unit), ...Array<number>(n).fill(1)],
    rows,
  }
}
