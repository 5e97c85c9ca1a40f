import type { BatchFacts } from '../batch/order/facts'
import type { BatchOrder } from '../batch/order/order'
import type { ReadyPlan } from '../batch/result/plan'
import { type Blend, normalised, type Prices } from '../blend/blend'
import type { Problem } from '../blend/check-blend'
import { barMeasures, differences, type MeasureValues } from '../blend/compare'
import type { Library } from '../blend/library'
import { type Flag, type FlagRules, flagsOf, isBeyondTrust } from '../blend/flags'
import { COST } from '../blend/measure'
import { blendValues } from '../blend/values'
import type { Brief } from '../optimise/brief/brief'
import type { NoResult, StudyAnswer, StudyResult, WithoutStudy } from '../optimise/studies/question'
import { oneStepStudy } from '../optimise/studies/study'
import { GRAMS_PER_KG } from '../units'
import { type BatchChange, batchChange, oilWeight, planWith } from './batch-change'
import { NOISE_PART } from '../noise'

/** An oil that can't be had any more, and the formula that has it. */
export interface GoneOrder {
  readonly oil: string
  /** The formula in use, percent of oil weight. */
  readonly base: Blend
  /** Prices in money per kg of all oils that have one, on the shelf or not. */
  readonly prices: Prices
  /** Oils that may take its place. */
  readonly candidates: readonly string[]
  /** How far each measure may move, in its unit; one left out is free to move. */
  readonly tolerances: Readonly<Record<string, number>>
  /** How the formula is made; its blend is put aside for those compared here. */
  readonly batch: BatchOrder
  /** Oils in one bar, g, where the batch does not say how many bars it makes. */
  readonly oilGramsPerBar: number
  readonly barsPerYear: number
  /** How many replacements to give, of single oils and of pairs each. */
  readonly most: number
}

/** What a change of formula costs, money; below zero is saved. Oils only. */
export interface CostChange {
  readonly perKgOils: number
  readonly perBar: number
  readonly perYear: number
}

/** A measure that moves further than it may. */
export interface Miss {
  readonly measure: string
  /** Replacement less the formula in use, in the measure's unit. */
  readonly by: number
  readonly tolerance: number
}

/** A formula without the oil. */
export interface Replacement extends StudyResult {
  /** The oils that take its place. */
  readonly oils: readonly string[]
  readonly flags: readonly Flag[]
  /** Measures beyond their tolerance; empty where all are within. */
  readonly misses: readonly Miss[]
  /** Null where an oil has no price. */
  readonly costChange: CostChange | null
  /** Hydroxide and label; with problems instead where the batch can't be made of it. */
  readonly batch: ({ readonly status: 'ready' } & BatchChange) | Refused
}

interface Refused {
  readonly status: 'invalid'
  readonly problems: readonly Problem[]
}

/**
 * What can be done without the oil: replacements within tolerance first, the bar that moves least before others;
 * last of all those that lie where the measures can't say what a bar will be.
 */
export type GoneAnswer =
  | {
      readonly status: 'found'
      readonly base: MeasureValues
      readonly sharePercent: number
      readonly oilGramsPerBar: number
      readonly replacements: readonly Replacement[]
    }
  | { readonly status: 'none'; readonly reason: NoResult }
  | Refused

/**
 * The best replacements for an oil that is gone: found and ranked as the study of doing without an oil
 * does, then split by the tolerance on measures. Of each, the hydroxide anew for the same weight of oils,
 * what changes on the ingredient list, and the cost of its oils against those of the formula in use.
 */
export function oilGone(
  brief: Brief,
  order: GoneOrder,
  library: Library,
  facts: BatchFacts,
  rules: FlagRules,
): GoneAnswer {
  const problems = goneProblems(order)
  if (problems.length > 0) return { status: 'invalid', problems }
  return replacementsFrom(
    oneStepStudy(brief, goneQuestion(order), library),
    order,
    library,
    facts,
    rules,
  )
}

/** The study that finds the replacements: the part that takes time, and can run elsewhere. */
export function goneQuestion({ oil, base, prices, candidates, most }: GoneOrder): WithoutStudy {
  return { kind: 'without', base: normalised(base), prices, oil, candidates, most }
}

/** The answer of that study with hydroxide, label and cost of each replacement. Expects a sound order. */
export function replacementsFrom(
  study: StudyAnswer,
  order: GoneOrder,
  library: Library,
  facts: BatchFacts,
  rules: FlagRules,
): GoneAnswer {
  if (study.status === 'invalid') return study
  if (study.status === 'none') return { status: 'none', reason: study.reason }
  const base = normalised(order.base)
  const before = planWith(order.batch, base, undefined, library, facts)
  if (before.status === 'invalid') return before
  const frame: Frame = { order, library, facts, rules, base, before: before.plan }
  const replacements = study.results.map((result) => replacementOf(result, frame))
  return {
    status: 'found',
    base: study.base,
    sharePercent: base[order.oil] ?? 0,
    oilGramsPerBar: oilGramsPerBar(frame),
    // A stable sort: within each rank the order of the study stays.
    replacements: replacements.sort((a, b) => rankOf(a) - rankOf(b)),
  }
}

/** Within tolerance, beyond it, and where no figure is to be trusted. */
function rankOf({ misses, flags }: Replacement): number {
  if (isBeyondTrust(flags)) return 2
  return misses.length > 0 ? 1 : 0
}

interface Frame {
  readonly order: GoneOrder
  readonly library: Library
  readonly facts: BatchFacts
  readonly rules: FlagRules
  readonly base: Blend
  readonly before: ReadyPlan
}

function replacementOf(result: StudyResult, frame: Frame): Replacement {
  const { order, library, facts, before } = frame
  const after = planWith(order.batch, result.blend, oilWeight(before), library, facts)
  return {
    ...result,
    oils: result.role.kind === 'replaces' ? result.role.oils : [],
    flags: flagsOf(result.blend, result.measures, frame.rules, library),
    misses: missesOf(result.measures, frame),
    costChange: costChange(result, frame),
    batch:
      after.status === 'ready'
        ? { status: 'ready', ...batchChange(before, after.plan, library, facts) }
        : after,
  }
}

function missesOf(measures: MeasureValues, { order, library, base }: Frame): Miss[] {
  const reference = blendValues(library, order.prices, base)
  return differences(barMeasures(library.measures), measures, reference).flatMap(
    ({ measure, by }) => {
      const tolerance = order.tolerances[measure]
      const isFar = tolerance !== undefined && Math.abs(by) > tolerance * (1 + NOISE_PART)
      return isFar ? [{ measure, by, tolerance }] : []
    },
  )
}

function costChange({ measures }: StudyResult, frame: Frame): CostChange | null {
  const { order, library, base } = frame
  const [after, before] = [measures[COST], blendValues(library, order.prices, base)[COST]]
  if (after === undefined || before === undefined) return null
  const perKgOils = after - before
  const perBar = (perKgOils * oilGramsPerBar(frame)) / GRAMS_PER_KG
  return { perKgOils, perBar, perYear: perBar * order.barsPerYear }
}

/** Oils in one bar, g: of the batch where it is cut into bars. */
function oilGramsPerBar({ order, before }: Frame): number {
  return before.bars ? oilWeight(before) / before.bars.count : order.oilGramsPerBar
}

/** What is wrong with the order itself. */
export function goneProblems({
  oil,
  base,
  barsPerYear,
  oilGramsPerBar: grams,
}: GoneOrder): Problem[] {
  const problems: Problem[] = []
  if (!((base[oil] ?? 0) > 0))
    problems.push({
      path: 'oil',
      message: `The formula has no "${oil}" in it. Name one of ${Object.keys(base).join(', ')}.`,
    })
  if (!(barsPerYear >= 0 && barsPerYear < Infinity))
    problems.push({
      path: 'barsPerYear',
      message: `It is ${barsPerYear}. Give 0 or more bars a year.`,
    })
  if (!(grams > 0 && grams < Infinity))
    problems.push({
      path: 'oilGramsPerBar',
      message: `It is ${grams}. Give the oils of a bar, above 0 g.`,
    })
  return problems
}
