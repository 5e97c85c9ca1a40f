import { ProgramError, type LinearProgram } from '../program'

/**
 * Rules over which variables a blend uses at all. A variable is *used* when it is above zero, and
 * then it is at least its `leastUse`; otherwise it is zero.
 */
export interface BlendRules {
  /** Least value of each variable where it is used at all; 0 for no such limit. */
  readonly leastUse: ArrayLike<number>
  /** How many of a group may be used: at most 5 of all, exactly one of these three, and so on. */
  readonly counts: readonly CountRule[]
  /** Where the first is used, so is the second. */
  readonly requires: readonly (readonly [variable: number, needed: number])[]
  /** Whole multiples of this only, or 0 for any value; in the variables' unit. */
  readonly step: number
}

/** From `least` to `most` of these variables are used. */
export interface CountRule {
  readonly variables: readonly number[]
  readonly least: number
  readonly most: number
}

/** No rules at all, to be spread and overridden. */
export function noRules(variableCount: number): BlendRules {
  return { leastUse: new Float64Array(variableCount), counts: [], requires: [], step: 0 }
}

/** Throws unless every rule can be read and the program's variables have limits from 0 up. */
export function requireReadable(rules: BlendRules, program: LinearProgram): void {
  requireLimits(program)
  requireNames(rules, program.cost.length)
  const needed = [
    ...rules.counts.filter(({ least }) => least > 0).flatMap(({ variables }) => variables),
    ...rules.requires.map(([, variable]) => variable),
  ]
  const vague = needed.find(
    (j) => rules.leastUse[j] === 0 && rules.step === 0 && program.lower[j] === 0,
  )
  if (vague !== undefined) {
    throw new ProgramError(
      `Variable ${vague} must be used but has no least use; give it one above 0.`,
    )
  }
}

function requireLimits(program: LinearProgram): void {
  for (let j = 0; j < program.cost.length; j++) {
    const lower = program.lower[j]!
    const upper = program.upper[j]!
    if (lower >= 0 && upper < Infinity) continue
    throw new ProgramError(
      `Variable ${j} may go from ${lower} to ${upper}; rules on use need limits from 0 up to a number.`,
    )
  }
}

function requireNames({ counts, requires, leastUse }: BlendRules, count: number): void {
  if (leastUse.length !== count) {
    throw new ProgramError(
      `Rules have ${leastUse.length} least uses, need ${count}; give one each.`,
    )
  }
  const named = [...counts.flatMap(({ variables }) => variables), ...requires.flat()]
  const stranger = named.find((j) => !Number.isInteger(j) || j < 0 || j >= count)
  if (stranger !== undefined) {
    throw new ProgramError(`Rules name variable ${stranger}; there are 0 to ${count - 1}.`)
  }
  const twice = counts.find(({ variables }) => new Set(variables).size < variables.length)
  if (twice) {
    throw new ProgramError(`Group ${twice.variables.join(', ')} names one twice; name each once.`)
  }
}
