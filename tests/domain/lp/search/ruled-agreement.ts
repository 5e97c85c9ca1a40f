import type { Highs } from 'highs'
import { solveWithRules, type RuledOutcome } from '../../../../src/domain/lp/search/branch'
import type { BlendRules } from '../../../../src/domain/lp/search/rules'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import type { RuledInstance } from '../../../generator/ruled-programs'
import { highsWithRules } from './highs-rules'

/** Of the optimum; both searches run to the end. */
const RELATIVE = 1e-7
/** A share this small is none, in percent. */
const NOTHING = 1e-6

export function searched(program: LinearProgram, rules: BlendRules): RuledOutcome {
  return solveWithRules(program, rules, () => true)
}

export function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= RELATIVE * Math.max(1, Math.abs(a), Math.abs(b))
}

/** Rules and limits that a blend breaks, read off its values alone. */
export function breaks(program: LinearProgram, rules: BlendRules, x: Float64Array): string[] {
  const faults: string[] = []
  const isUsed = (j: number): boolean => (x[j] ?? NaN) > NOTHING
  x.forEach((value, j) => {
    const least = rules.leastUse[j] ?? NaN
    if (isUsed(j) && !(value >= least - NOTHING)) faults.push(`${j} is ${value}, below ${least}`)
    if (!(value >= (program.lower[j] ?? NaN) && value <= (program.upper[j] ?? NaN))) {
      faults.push(`${j} is ${value}, out of its limits`)
    }
    const steps = rules.step > 0 ? value / rules.step : 0
    if (Math.abs(steps - Math.round(steps)) > NOTHING) faults.push(`${j} is ${value}, off the step`)
  })
  for (const { variables, least, most } of rules.counts) {
    const used = variables.filter(isUsed).length
    if (used < least || used > most) faults.push(`${used} used of ${variables.join()}`)
  }
  for (const [variable, needed] of rules.requires) {
    if (isUsed(variable) && !isUsed(needed)) faults.push(`${variable} without ${needed}`)
  }
  program.rows.forEach((row, i) => {
    const value = Array.from(row.coefficients).reduce((sum, c, j) => sum + c * (x[j] ?? NaN), 0)
    const slack = 1e-9 * Math.max(1, Math.abs(value))
    if (!(value >= row.lower - slack && value <= row.upper + slack))
      faults.push(`row ${i}: ${value}`)
  })
  return faults
}

/** Searches an instance here and with HiGHS; what they disagree on, and rules that are broken. */
export function ruledDisagreements(
  { program, rules }: RuledInstance,
  highs: Highs,
): { status: RuledOutcome['status']; faults: string[] } {
  const outcome = searched(program, rules)
  const truth = highsWithRules(highs, program, rules)
  if (outcome.status !== 'optimal' || truth.status !== 'optimal') {
    const faults = outcome.status === truth.status ? [] : [`${outcome.status}, not ${truth.status}`]
    return { status: outcome.status, faults }
  }
  const faults = breaks(program, rules, outcome.best.x)
  if (!near(outcome.best.objective, truth.objective)) {
    faults.push(`cheapest ${outcome.best.objective}, reference ${truth.objective}`)
  }
  return { status: outcome.status, faults }
}
