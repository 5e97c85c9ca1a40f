import { type BlendRules, noRules } from '../../lp/search/rules'
import type { LinearProgram, LinearRow } from '../../lp/program'
import { type BlendSpace, negated } from '../space/blend-space'
import { blendRules } from '../space/blend-rules'
import { PRESENT_PERCENT } from '../brief/brief-rules'

/**
 * What to search for: the least cost over the blends of a space that keep its rules. The first
 * `shareCount` variables are the shares in percent, in the order of the space's oils; further ones help
 * to state the goal. The goal's value, in its own unit, is `sign` × objective + `offset`.
 */
export interface RuledQuestion {
  readonly program: LinearProgram
  readonly rules: BlendRules
  readonly shareCount: number
  readonly sign: 1 | -1
  readonly offset: number
}

/** Which way a measure or a share should go. */
export type Way = 'least' | 'most'

/** The limits and rules of a space, of which any blend is as good as any other. */
export function anyBlend({ program, oils, brief }: BlendSpace): RuledQuestion {
  return {
    // Rows that limit nothing are left out: every pivot of the search would carry them along.
    program: { ...program, rows: program.rows.filter(isLimiting) },
    rules: blendRules(oils, brief.rules),
    shareCount: oils.length,
    sign: 1,
    offset: 0,
  }
}

function isLimiting({ lower, upper }: LinearRow): boolean {
  return lower > -Infinity || upper < Infinity
}

/** The question of the least or most of Σ value × share. */
export function towards(question: RuledQuestion, values: Float64Array, way: Way): RuledQuestion {
  const cost = padded(question, way === 'least' ? values : negated(values))
  const program = { ...question.program, cost }
  return { ...question, program, sign: way === 'least' ? 1 : -1, offset: 0 }
}

/** The question with Σ value × share held to a range as well. */
export function within(
  question: RuledQuestion,
  values: Float64Array,
  lower: number,
  upper: number,
): RuledQuestion {
  const { program } = question
  const row = { coefficients: padded(question, values), lower, upper }
  return { ...question, program: { ...program, rows: [...program.rows, row] } }
}

/**
 * The question over the blends of just the oils that a blend has, each with at least what it must have
 * where it is in: convex, and all of them keep the rules, unless there are steps.
 */
export function amongOilsOf(question: RuledQuestion, shares: Float64Array): RuledQuestion {
  const { program, rules } = question
  const isIn = (oil: number) => (shares[oil] ?? 0) > PRESENT_PERCENT
  const isOut = (oil: number) => oil < question.shareCount && !isIn(oil)
  const lower = Array.from(program.lower, (least, oil) =>
    isIn(oil) ? Math.max(least, rules.leastUse[oil] ?? 0) : least,
  )
  const upper = Array.from(program.upper, (most, oil) => (isOut(oil) ? 0 : most))
  return { ...question, program: { ...program, lower, upper }, rules: noRules(lower.length) }
}

/** Values of the shares with zeros for the further variables. */
function padded({ program }: RuledQuestion, values: Float64Array): Float64Array {
  const all = new Float64Array(program.lower.length)
  all.set(values)
  return all
}

/** The value of an objective in the goal's unit. */
export function goalOf({ sign, offset }: RuledQuestion, objective: number): number {
  return sign * objective + offset
}

/** The objective of a goal's value. */
export function objectiveOf({ sign, offset }: RuledQuestion, value: number): number {
  return sign * (value - offset)
}
