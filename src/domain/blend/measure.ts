import type { Basis } from '../chemistry/fatty-acid'
import type { Oil } from './oil'
import { fractionFromPerMille, WHOLE_PERCENT } from '../units'

/** The id of the one measure that is not made of fatty acids: price per kg of oils. */
export const COST = 'cost'

/** One weight of a measure, with the reason it has that value. */
export interface MeasureWeight {
  readonly weight: number
  readonly basis: Basis
  readonly source: string
}

/**
 * A linear measure of a bar. An oil's value is
 * offset + Σ weight × (g acid per 100 g acids) + min(perUnsaponifiable × g unsaponifiables per 100 g oil, cap),
 * and a blend's value is the weight average of its oils' values.
 */
export interface AcidMeasure {
  readonly id: string
  readonly name: string
  /** What it means, in one sentence. */
  readonly meaning: string
  /** Which way makers usually want it. */
  readonly better: 'more' | 'less'
  readonly unit: 'points'
  /** Shown and limited from the first visit, or only when asked for. */
  readonly shown: boolean
  /** Differences smaller than this can't be told apart, in the measure's unit. */
  readonly tie: number
  readonly offset: number
  readonly weights: Readonly<Record<string, MeasureWeight>>
  readonly unsaponifiable: {
    readonly pointsPerGPer100G: number
    readonly cap: number
    readonly basis: Basis
    readonly source: string
  } | null
  /** What the measure cannot say. */
  readonly limits: readonly string[]
}

/** Price per kg of oils; its values come from the brief, not from the library. */
export interface CostMeasure {
  readonly id: typeof COST
  readonly name: string
  readonly meaning: string
  readonly better: 'less'
  readonly unit: 'money per kg'
  readonly shown: boolean
  readonly tie: number
  readonly limits: readonly string[]
}

export type Measure = AcidMeasure | CostMeasure

const known = new WeakMap<AcidMeasure, WeakMap<Oil, number>>()

/**
 * Value of an acid measure for one oil at its typical profile, in points.
 * Typical shares are taken as parts of their own sum, so that a profile of 99.8 is not 0.2 short.
 * Reckoned once for each measure and oil as they stand: a changed one is another object.
 */
export function measureOfOil(measure: AcidMeasure, oil: Oil): number {
  let ofMeasure = known.get(measure)
  if (!ofMeasure) known.set(measure, (ofMeasure = new WeakMap()))
  let value = ofMeasure.get(oil)
  if (value === undefined) ofMeasure.set(oil, (value = reckon(measure, oil)))
  return value
}

function reckon(measure: AcidMeasure, oil: Oil): number {
  let total = 0
  let weighted = 0
  for (const [acid, share] of Object.entries(oil.acids)) {
    const weight = measure.weights[acid]
    if (!weight) throw new Error(`Measure ${measure.id} has no weight for ${acid} of ${oil.id}`)
    total += share.typical
    weighted += weight.weight * share.typical
  }
  if (total <= 0) throw new Error(`Oil ${oil.id} has no fatty acids to measure`)
  return measure.offset + (weighted * WHOLE_PERCENT) / total + unsaponifiablePoints(measure, oil)
}

function unsaponifiablePoints({ unsaponifiable }: AcidMeasure, oil: Oil): number {
  if (!unsaponifiable) return 0
  const gPer100G = fractionFromPerMille(oil.unsaponifiableGPerKg.typical) * WHOLE_PERCENT
  return Math.min(unsaponifiable.pointsPerGPer100G * gPer100G, unsaponifiable.cap)
}
