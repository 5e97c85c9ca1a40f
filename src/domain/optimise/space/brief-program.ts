import { type Blend, normalised } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { oilValue } from '../../blend/values'
import { type LinearProgram, rowOfTerms } from '../../lp/program'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { type Brief, type Goal, pricesOf } from '../brief/brief'
import { formulate } from './formulate'

/**
 * A brief as a linear program over oil shares in percent: its limits (see `formulate`), the goal as cost,
 * and for `closestTo` one row per oil that splits its change into a rise and a fall, in variables after the
 * shares. The goal's value is `goalSign` × the least cost. Expects a brief that `checkBrief` finds sound.
 */
export function briefProgram(brief: Brief, library: Library): LinearProgram {
  const limits = formulate(brief, library, 'limits only')
  if ('closestTo' in brief.goal) return withLeastChange(brief, brief.goal.closestTo, limits)
  const [prices, sign] = [pricesOf(brief), goalSign(brief.goal)]
  const measure = 'minimise' in brief.goal ? brief.goal.minimise : brief.goal.maximise
  const valueOf = (oil: string) => fractionFromPercent(oilValue(library, prices, measure, oil))
  return { ...limits, cost: Object.keys(brief.oils).map((oil) => sign * valueOf(oil)) }
}

/** What a goal's value is of the cost that a program makes least. */
export function goalSign(goal: Goal): 1 | -1 {
  return 'maximise' in goal ? -1 : 1
}

/** Adds share = target + rise − fall for every oil and makes the sum of rises and falls the goal. */
function withLeastChange({ oils }: Brief, closestTo: Blend, limits: LinearProgram): LinearProgram {
  const target = normalised(closestTo)
  const count = limits.cost.length
  const wide = (values: ArrayLike<number>, further: number) => {
    const all = new Float64Array(3 * count).fill(further)
    all.set(values)
    return all
  }
  const changes = Object.keys(oils).map((oil, index) => {
    const rise = count + 2 * index
    const terms = [[index, 1] as const, [rise, -1] as const, [rise + 1, 1] as const]
    return rowOfTerms(3 * count, terms, { lower: target[oil] ?? 0, upper: target[oil] ?? 0 })
  })
  const rows = limits.rows.map((row) => ({ ...row, coefficients: wide(row.coefficients, 0) }))
  return {
    cost: wide(limits.cost, 1),
    lower: wide(limits.lower, 0),
    upper: wide(limits.upper, WHOLE_PERCENT),
    rows: [...rows, ...changes],
  }
}
