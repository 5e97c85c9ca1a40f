import { normalised } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { oilValue } from '../../blend/values'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { type Brief, goalMeasure, pricesOf } from '../brief/brief'
import type { LinearProgram, Row, Variable } from '../../lp/solvers/program'
import { formulate, type NamedRow } from './formulate'

/**
 * A brief as a linear program over oil shares in percent: the limits of `shareProgram`, the goal as
 * cost, and for `closestTo` one row per oil that splits its change into a rise and a fall.
 * Expects a brief that `checkBrief` finds sound.
 */
export function briefProgram(brief: Brief, library: Library): LinearProgram {
  return withGoal(brief, library, shareProgram(brief, library))
}

/** The limits of a brief without its goal (see `formulate`), its variables named by the oils. */
export function shareProgram(brief: Brief, library: Library): LinearProgram {
  const { lower, upper, rows } = formulate(brief, library, 'limits only')
  const variables = Object.keys(brief.oils).map((name, oil): Variable => {
    return { name, lower: lower[oil] ?? NaN, upper: upper[oil] ?? NaN, cost: 0 }
  })
  return { sense: 'min', variables, rows: rows.map(termsOfRow) }
}

function termsOfRow({ name, lower, upper, coefficients }: NamedRow): Row {
  const terms = [...coefficients].flatMap((one, oil) => (one === 0 ? [] : [[oil, one] as const]))
  return { name, lower, upper, terms }
}

function withGoal(brief: Brief, library: Library, program: LinearProgram): LinearProgram {
  const { goal } = brief
  const measure = goalMeasure(goal)
  if (measure === undefined) return withLeastChange(brief, program)
  const oils = program.variables.map(({ name }) => name)
  const prices = pricesOf(brief)
  const cost = oils.map((oil) => fractionFromPercent(oilValue(library, prices, measure, oil)))
  return {
    ...program,
    sense: 'minimise' in goal ? 'min' : 'max',
    variables: program.variables.map((share, index) => ({ ...share, cost: cost[index] ?? 0 })),
  }
}

/** Adds share = target + rise − fall for every oil and makes the sum of rises and falls the goal. */
function withLeastChange(brief: Brief, program: LinearProgram): LinearProgram {
  if (!('closestTo' in brief.goal)) return program
  const target = normalised(brief.goal.closestTo)
  const count = program.variables.length
  const changes = program.variables.flatMap(({ name }): Variable[] => [
    { name: `${name} rise`, lower: 0, upper: WHOLE_PERCENT, cost: 1 },
    { name: `${name} fall`, lower: 0, upper: WHOLE_PERCENT, cost: 1 },
  ])
  const rows = program.variables.map(({ name }, index): Row => {
    const at = target[name] ?? 0
    const rise = count + 2 * index
    const terms = [[index, 1] as const, [rise, -1] as const, [rise + 1, 1] as const]
    return { name: `change of ${name}`, lower: at, upper: at, terms }
  })
  return {
    sense: 'min',
    variables: [...program.variables, ...changes],
    rows: [...program.rows, ...rows],
  }
}
