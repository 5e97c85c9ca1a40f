import highsLoader, { type Highs } from 'highs'
import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { briefProgram } from '../../../../src/domain/optimise/space/brief-program'
import type { LinearProgram, Row, Variable } from '../../../../src/domain/lp/solvers/program'
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

/** What HiGHS makes of a brief with rules; `objective` is that of its linear program. */
export type RuledReference =
  | { readonly status: 'optimal'; readonly objective: number }
  | { readonly status: 'infeasible' }
  | { readonly status: 'out of time' }

/** HiGHS on briefs with rules, as a mixed-integer program: a 0-1 variable of use for each oil. */
export async function loadHighsOnBriefs(): Promise<
  (brief: Brief, seconds: number) => RuledReference
> {
  const highs = await highsLoader()
  return (brief, seconds) => ask(highs, brief, seconds)
}

function ask(highs: Highs, brief: Brief, seconds: number): RuledReference {
  const { program, integers } = mixedProgram(brief)
  const { variables, rows, sense } = program
  const starts = [0]
  const terms = rows.flatMap((row) => {
    starts.push((starts.at(-1) ?? 0) + row.terms.length)
    return row.terms
  })
  const { objectiveSense, modelStatus } = highs.constants
  const model = {
    numCols: variables.length,
    numRows: rows.length,
    sense: sense === 'min' ? objectiveSense.minimize : objectiveSense.maximize,
    colCost: variables.map(({ cost }) => cost),
    colLower: variables.map(({ lower }) => lower),
    colUpper: variables.map(({ upper }) => upper),
    rowLower: rows.map(({ lower }) => lower),
    rowUpper: rows.map(({ upper }) => upper),
    matrix: {
      format: 'csr' as const,
      numRows: rows.length,
      numCols: variables.length,
      starts,
      indices: terms.map(([place]) => place),
      values: terms.map(([, coefficient]) => coefficient),
    },
    integrality: variables.map((_, place) => (integers.has(place) ? 1 : 0)),
  }
  return highs.withModel(model, (solver): RuledReference => {
    for (const [name, value] of Object.entries(OPTIONS)) solver.options.set(name, value)
    solver.options.set('time_limit', seconds)
    const { modelStatus: status } = solver.run()
    if (status === modelStatus.infeasible) return { status: 'infeasible' }
    if (status === modelStatus.timeLimit) return { status: 'out of time' }
    if (status !== modelStatus.optimal) throw new Error(`HiGHS ended with model status ${status}`)
    return { status: 'optimal', objective: solver.getObjectiveValue() }
  })
}

/** The brief's linear program with a use of 0 or 1 for each oil, and a whole number of steps. */
function mixedProgram(brief: Brief): { program: LinearProgram; integers: ReadonlySet<number> } {
  const linear = briefProgram({ ...brief, rules: undefined }, library)
  const oils = Object.keys(brief.oils)
  const { atMostOils, shareStep, requires = [], oneOf = [] } = brief.rules ?? {}
  const placeOf = (oil: string) => oils.indexOf(oil)
  const use = (oil: string) => linear.variables.length + placeOf(oil)
  const steps = (oil: string) => linear.variables.length + oils.length + placeOf(oil)
  const whole = (name: string, upper: number): Variable => ({ name, lower: 0, upper, cost: 0 })
  const most = (oil: string) => brief.oils[oil]?.max ?? 100
  const row = (name: string, terms: Row['terms'], lower: number, upper: number): Row => ({
    name,
    terms,
    lower,
    upper,
  })
  const together = (name: string, group: readonly string[], limit: number) =>
    row(
      name,
      group.map((oil) => [use(oil), 1] as const),
      -Infinity,
      limit,
    )
  const rows = [
    ...linear.rows,
    ...oils.flatMap((oil) => [
      row(
        `${oil} only if in`,
        [
          [placeOf(oil), 1],
          [use(oil), -most(oil)],
        ],
        -Infinity,
        0,
      ),
      row(
        `${oil} enough if in`,
        [
          [placeOf(oil), 1],
          [use(oil), -leastShare(brief, oil)],
        ],
        0,
        Infinity,
      ),
    ]),
    ...(atMostOils === undefined ? [] : [together('at most', oils, atMostOils)]),
    ...oneOf.map((group) => together('one of', group, 1)),
    ...requires.map((pair) =>
      row(
        'together',
        [
          [use(pair.oil), 1],
          [use(pair.with), -1],
        ],
        -Infinity,
        0,
      ),
    ),
    ...(shareStep === undefined
      ? []
      : oils.map((oil) =>
          row(
            'in steps',
            [
              [placeOf(oil), 1],
              [steps(oil), -shareStep],
            ],
            0,
            0,
          ),
        )),
  ]
  const uses = oils.map((oil) => whole(`${oil} in`, 1))
  const counts =
    shareStep === undefined ? [] : oils.map((oil) => whole(`${oil} steps`, 100 / shareStep))
  const variables = [...linear.variables, ...uses, ...counts]
  const integers = new Set([...variables.keys()].slice(linear.variables.length))
  return { program: { ...linear, variables, rows }, integers }
}
