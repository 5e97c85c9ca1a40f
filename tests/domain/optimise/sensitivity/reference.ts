import type { Blend } from '../../../../src/domain/blend/blend'
import { goalMeasure } from '../../../../src/domain/optimise/brief/brief'
import { briefProgram, goalSign } from '../../../../src/domain/optimise/space/brief-program'
import { limitsOf, withLimit } from '../../../../src/domain/optimise/brief/limits'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { loadHighs } from '../../lp/simplex/highs'
import { highs as highsWithPoint } from '../../lp/solvers/loaded-highs'
import type { Case } from './random-briefs'

const highs = await loadHighs()

/**
 * The best goal value of a brief by HiGHS, from a program that is built from the oils and not from the
 * space that the reasons come from; undefined where no blend keeps the brief.
 */
export function bestValue({ brief, library }: Omit<Case, 'name'>): number | undefined {
  const program = briefProgram(brief, library)
  const { lower, upper, rows } = program
  const crossed = Array.from(lower).some((least, at) => least > (upper[at] ?? NaN))
  if (crossed || rows.some((row) => row.lower > row.upper)) return undefined
  const { status, objective } = highs(program)
  if (status === 'unbounded') throw new Error('A brief of limited shares is unbounded')
  if (status === 'infeasible') return undefined
  return goalSign(brief.goal) * objective
}

/** A best blend of a brief by HiGHS. */
export function bestBlendOf({ brief, library }: Case): Blend {
  const outcome = highsWithPoint(briefProgram(brief, library))
  if (outcome.status !== 'optimal') throw new Error(`The brief is ${outcome.status}`)
  return Object.fromEntries(Object.keys(brief.oils).map((oil, k) => [oil, outcome.point[k] ?? 0]))
}

/** The best value as a cost: what is least is best, also where the goal is to have most. */
export function bestCost(one: Omit<Case, 'name'>): number | undefined {
  const value = bestValue(one)
  return value === undefined || 'minimise' in one.brief.goal ? value : -value
}

/** The case with one limit at another value, or without it. */
export function moved<T extends Case>(one: T, path: string, value: number | undefined): T {
  const limit = limitsOf(one.brief).find((other) => other.path === path)
  if (!limit) throw new Error(`No limit ${path}`)
  return { ...one, brief: withLimit(one.brief, limit, value) }
}

/** The case with one oil at another price. */
export function priced<T extends Case>(one: T, oil: string, pricePerKg: number): T {
  const oils = { ...one.brief.oils, [oil]: { ...one.brief.oils[oil], pricePerKg } }
  return { ...one, brief: { ...one.brief, oils } }
}

/** Cases that have a blend and a measure for goal, or that have none. */
export function feasibleOnes(cases: readonly Case[]): Case[] {
  return cases.filter((one) => goalMeasure(one.brief.goal) && bestValue(one) !== undefined)
}

/** Least cost of a program by HiGHS; undefined where nothing is feasible. */
export function leastCost(program: LinearProgram): number | undefined {
  const { status, objective } = highs(program)
  return status === 'optimal' ? objective : undefined
}
