import { flagRules } from '../data/flags'
import { library } from './library'
import type { BatchPlan } from '../domain/batch/result/plan'
import { planBatch } from '../domain/batch/result/plan'
import { sum } from '../domain/batch/weigh/weights'
import { type Blend, normalised, type Prices } from '../domain/blend/blend'
import {
  type Difference,
  differences,
  type MeasureValues,
  type ShareChange,
  shareChanges,
} from '../domain/blend/compare'
import { type Flag, flagsOf } from '../domain/blend/flags'
import { COST } from '../domain/blend/measure'
import { blendValues } from '../domain/blend/values'
import { GRAMS_PER_KG } from '../domain/units'
import { plainOrderFor } from './batch-choices'
import type { BatchChoices, Candidate } from './work'

/** What can be said of one blend by itself. */
export interface Facts {
  readonly values: MeasureValues
  /** Oils of the blend without a price. */
  readonly unpriced: readonly string[]
  readonly flags: readonly Flag[]
  /** The batch the choices would make of it. */
  readonly plan: BatchPlan
}

/** A candidate with all that its column shows. */
export interface Column extends Facts {
  readonly candidate: Candidate
  readonly isReference: boolean
  /** Whether it is the blend in hand. */
  readonly isPresent: boolean
  /** Beside the reference, by measure; empty for the reference itself. */
  readonly differences: ReadonlyMap<string, Difference>
  /** From the reference's oils to this one's; empty for the reference itself. */
  readonly changes: readonly ShareChange[]
}

/** The facts of a blend at some prices (money per kg) and batch choices. */
export function factsOf(blend: Blend, prices: Prices, choices: BatchChoices): Facts {
  const values = blendValues(library, prices, blend)
  return {
    values,
    unpriced: Object.keys(blend).filter((oil) => !(oil in prices)),
    flags: flagsOf(blend, values, flagRules, library),
    plan: planBatch(plainOrderFor(normalised(blend), choices), library),
  }
}

/** A column beside the reference's. */
export function columnOf(
  candidate: Candidate,
  facts: Facts,
  reference: { readonly candidate: Candidate; readonly facts: Facts },
  isPresent: boolean,
): Column {
  const isReference = candidate === reference.candidate
  const told = isReference
    ? []
    : differences(library.measures, facts.values, reference.facts.values)
  return {
    ...facts,
    candidate,
    isReference,
    isPresent,
    differences: new Map(told.map((one) => [one.measure, one])),
    changes: isReference ? [] : shareChanges(reference.candidate.blend, candidate.blend),
  }
}

/**
 * What the oils of one bar cost, in money: its share of the batter's oils at the blend's price per kg.
 * `barGrams` is the weight as poured, in g. Undefined where the cost or the batch is not known.
 */
export function costPerBar({ values, plan }: Facts, barGrams: number): number | undefined {
  const perKg = values[COST]
  if (perKg === undefined || plan.status !== 'ready') return undefined
  const oilGrams = (barGrams * sum(plan.oilGrams)) / plan.totalGrams
  return (oilGrams / GRAMS_PER_KG) * perKg
}
