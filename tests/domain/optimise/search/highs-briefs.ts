import highsLoader, { type Highs } from 'highs'
import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { briefProgram, goalSign } from '../../../../src/domain/optimise/space/brief-program'
import { type LinearProgram, rowOfTerms } from '../../../../src/domain/lp/program'
import { modelData } from '../../../../src/domain/lp/solvers/highs'
import { leastShare } from './rule-faults'

/** To the end, and as exactly as HiGHS goes: it would stop at a gap of 1e-4 and miss rows by 1e-6. */
const OPTIONS = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 0,
  mip_feasibility_tolerance: 1e-9,
  primal_feasibility_tolerance: 1e-9,
  dual_feasibility_tolerance: 1e-9,
}

/** What HiGHS makes of a brief with rules; `objective` is the goal's value in its linear program. */
export type RuledReference =
  | { readonly status: 'optimal'; readonly objective: number }
  | { readonly status: 'infeasible' }
  | { readonly status: 'unfinished' }

/** HiGHS on briefs with rules, as a mixed-integer program: a 0-1 variable of use for each oil. */
export async function loadHighsOnBriefs(): Promise<
  (brief: Brief, nodes: number) => RuledReference
> {
  const highs = await highsLoader()
  return (brief, nodes) => ask(highs, brief, nodes)
}

/** It may look at so many nodes, which is the same on a machine under load. */
function ask(highs: Highs, brief: Brief, nodes: number): RuledReference {
  const { program, integers } = mixedProgram(brief)
  const { modelStatus } = highs.constants
  const integrality = Array.from(program.cost, (_, place) => (integers.has(place) ? 1 : 0))
  const model = { ...modelData(program), integrality }
  return highs.withModel(model, (solver): RuledReference => {
    for (const [name, value] of Object.entries(OPTIONS)) solver.options.set(name, value)
    solver.options.set('mip_max_nodes', nodes)
    const { modelStatus: status } = solver.run()
    if (status === modelStatus.infeasible) return { status: 'infeasible' }
    if (status === modelStatus.solutionLimit) return { status: 'unfinished' }
    if (status !== modelStatus.optimal) throw new Error(`HiGHS ended with model status ${status}`)
    return { status: 'optimal', objective: goalSign(brief.goal) * solver.getObjectiveValue() }
  })
}

/** The brief's linear program with a use of 0 or 1 for each oil, and a whole number of steps. */
function mixedProgram(brief: Brief): { program: LinearProgram; integers: ReadonlySet<number> } {
  const linear = briefProgram({ ...brief, rules: undefined }, library)
  const shares = linear.cost.length
  const oils = Object.keys(brief.oils)
  const { atMostOils, shareStep, requires = [], oneOf = [] } = brief.rules ?? {}
  const uses = oils.map(() => 1)
  const counts = shareStep === undefined ? [] : oils.map(() => 100 / shareStep)
  const width = shares + uses.length + counts.length
  const share = (oil: string) => oils.indexOf(oil)
  const use = (oil: string) => shares + share(oil)
  const most = (oil: string) => brief.oils[oil]?.max ?? 100
  const row = (terms: readonly (readonly [number, number])[], lower: number, upper: number) =>
    rowOfTerms(width, terms, { lower, upper })
  const two = (one: number, other: number, factor: number, lower: number, upper: number) =>
    row([[one, 1] as const, [other, -factor] as const], lower, upper)
  const atMost = (group: readonly string[], limit: number) =>
    row(
      group.map((oil) => [use(oil), 1] as const),
      -Infinity,
      limit,
    )
  const wide = (values: ArrayLike<number>, further: readonly number[] = []) => {
    const all = new Float64Array(width)
    all.set(values)
    all.set(further, shares)
    return all
  }
  const rows = [
    ...linear.rows.map((one) => ({ ...one, coefficients: wide(one.coefficients) })),
    ...oils.flatMap((oil) => [
      two(share(oil), use(oil), most(oil), -Infinity, 0),
      two(share(oil), use(oil), leastShare(brief, oil), 0, Infinity),
    ]),
    ...(atMostOils === undefined ? [] : [atMost(oils, atMostOils)]),
    ...oneOf.map((group) => atMost(group, 1)),
    ...requires.map((pair) => two(use(pair.oil), use(pair.with), 1, -Infinity, 0)),
    ...counts.map((_, at) => two(at, shares + oils.length + at, shareStep ?? NaN, 0, 0)),
  ]
  const program = {
    cost: wide(linear.cost),
    lower: wide(linear.lower),
    upper: wide(linear.upper, [...uses, ...counts]),
    rows,
  }
  return { program, integers: new Set([...Array(width).keys()].slice(shares)) }
}
