import type { Library } from '../../../../src/domain/blend/library'
import type { Brief, Limits } from '../../../../src/domain/optimise/brief/brief'
import { libraryOfValues } from '../../blend/stub-library'
import type { Trap } from './lp-cases'

/** Name of the measure that stands for a trap's objective. */
const GOAL = 'goal'

/**
 * A trap as a brief and the library it needs, so that it can be put through the whole path: variables
 * are oils, rows measures, the objective a measure of its own. Every trap has a row that makes its
 * variables add to 100, so the 100 % that bounds each share changes nothing of the truth.
 */
export function trapBrief(trap: Trap): { brief: Brief; library: Library } {
  const wishes = trap.rows.filter(({ name }) => name !== 'sum')
  const values = trap.variables.map(({ name, cost }, index): [string, Record<string, number>] => [
    name,
    {
      ...Object.fromEntries(wishes.map((row) => [row.name, valueIn(row, index)])),
      [GOAL]: cost * 100,
    },
  ])
  const brief: Brief = {
    oils: Object.fromEntries(trap.variables.map((variable) => [variable.name, limits(variable)])),
    groups: [],
    measures: Object.fromEntries(wishes.map((row) => [row.name, limits(row)])),
    goal: trap.sense === 'min' ? { minimise: GOAL } : { maximise: GOAL },
  }
  return { brief, library: libraryOfValues(Object.fromEntries(values)) }
}

/** A coefficient of percent shares as the oil's value in points. */
function valueIn({ terms }: Trap['rows'][number], index: number): number {
  const term = terms.find(([variable]) => variable === index)
  return (term?.[1] ?? 0) * 100
}

function limits({ lower, upper }: { lower: number | null; upper: number | null }): Limits {
  return { min: lower ?? undefined, max: upper ?? undefined }
}
