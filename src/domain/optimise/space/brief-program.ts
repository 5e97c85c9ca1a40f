import { normalised } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { oilValue } from '../../blend/values'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { type Brief, goalMeasure, type Limits, pricesOf } from '../brief/brief'
import type { Side } from '../brief/limits'
import type { LinearProgram, Row, Variable } from '../../lp/solvers/program'
import { heldForAnyLot, wishedValue } from '../lots/wishes'

/** Name of the row that makes the shares add to 100 %. */
const SUM_ROW = 'sum'

/**
 * A brief as a linear program over oil shares in percent: the limits of `shareProgram`, the goal as
 * cost, and for `closestTo` one row per oil that splits its change into a rise and a fall.
 * Expects a brief that `checkBrief` finds sound.
 */
export function briefProgram(brief: Brief, library: Library): LinearProgram {
  return withGoal(brief, library, shareProgram(brief, library))
}

/**
 * The limits of a brief without its goal. Variables come in the order of the brief's oils; rows are the
 * sum, the measures that have a range, and the groups. A wish that must hold for any lot has a row for
 * each side, named by its path, since the lots that have least of a measure are not those that have most.
 */
export function shareProgram(brief: Brief, library: Library): LinearProgram {
  const oils = Object.keys(brief.oils)
  const rows = [sumRow(oils), ...measureRows(brief, library, oils), ...groupRows(brief, oils)]
  const shares = oils.map((oil): Variable => {
    const { min, max } = brief.oils[oil] ?? {}
    return { name: oil, lower: min ?? 0, upper: max ?? WHOLE_PERCENT, cost: 0 }
  })
  return { sense: 'min', variables: shares, rows }
}

function sumRow(oils: readonly string[]): Row {
  const terms = oils.map((_, index) => [index, 1] as const)
  return { name: SUM_ROW, lower: WHOLE_PERCENT, upper: WHOLE_PERCENT, terms }
}

function measureRows(brief: Brief, library: Library, oils: readonly string[]): Row[] {
  return Object.entries(brief.measures).flatMap(([measure, { min, max }]) => {
    const path = `measures.${measure}`
    const row = (name: string, side: Side, limits: Limits): Row => ({
      name,
      ...bounds(limits),
      terms: termsOf(oils, wishedValue(brief, library, measure, side)),
    })
    if (!heldForAnyLot(brief, measure))
      return min === undefined && max === undefined ? [] : [row(path, 'min', { min, max })]
    return [
      ...(min === undefined ? [] : [row(`${path}.min`, 'min', { min })]),
      ...(max === undefined ? [] : [row(`${path}.max`, 'max', { max })]),
    ]
  })
}

/** Coefficients that turn shares in percent into the blend's weight average of a value. */
function termsOf(oils: readonly string[], valueOf: (oil: string) => number): [number, number][] {
  return oils.map((oil, index) => [index, fractionFromPercent(valueOf(oil))])
}

function groupRows(brief: Brief, oils: readonly string[]): Row[] {
  return brief.groups.map((group, number) => ({
    name: `groups[${number}]`,
    ...bounds(group),
    terms: oils.flatMap((oil, index) => (group.oils.includes(oil) ? [[index, 1] as const] : [])),
  }))
}

function bounds({ min, max }: Limits): { lower: number; upper: number } {
  return { lower: min ?? -Infinity, upper: max ?? Infinity }
}

function withGoal(brief: Brief, library: Library, program: LinearProgram): LinearProgram {
  const { goal } = brief
  const measure = goalMeasure(goal)
  if (measure === undefined) return withLeastChange(brief, program)
  const oils = program.variables.map(({ name }) => name)
  const prices = pricesOf(brief)
  const cost = new Map(termsOf(oils, (oil) => oilValue(library, prices, measure, oil)))
  return {
    ...program,
    sense: 'minimise' in goal ? 'min' : 'max',
    variables: program.variables.map((share, index) => ({ ...share, cost: cost.get(index) ?? 0 })),
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
