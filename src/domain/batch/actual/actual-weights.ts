import type { ReadyPlan } from '../result/plan'
import type { Grams, Weights } from '../weigh/weights'

/** What was really weighed, g, by the key of its line; a line left out counts as planned. */
export type Actuals = Readonly<Record<string, number>>

/** The plan's weights with what was really weighed in their place. */
export function actualWeights(plan: ReadyPlan, actuals: Actuals): Weights {
  const read = (kind: string, id: string | number, planned: number) =>
    actuals[`${kind}:${id}`] ?? planned
  const keyed = (kind: string, grams: Grams) =>
    Object.fromEntries(Object.entries(grams).map(([id, g]) => [id, read(kind, id, g)]))
  const listed = (kind: string, grams: readonly number[]) => grams.map((g, i) => read(kind, i, g))
  const plainG = actuals.water ?? plan.water.plainG
  const cookG = actuals.cookWater ?? plan.water.cookG
  const weights = {
    oilGrams: keyed('oil', plan.oilGrams),
    extraFatGrams: keyed('extraFat', plan.extraFatGrams),
    alkaliGrams: keyed('alkali', defined(plan.alkaliGrams)),
    acidGrams: listed('acid', plan.acidGrams),
    liquidGrams: listed('liquid', plan.liquidGrams),
    additiveGrams: listed('additive', plan.additiveGrams),
    fragranceGrams: keyed('scent', plan.fragranceGrams),
    waterGrams: plainG + cookG,
    water: { ...plan.water, plainG, cookG },
    waterOverG: 0,
  }
  return { ...weights, totalGrams: totalOf(weights) }
}

function totalOf(weights: Omit<Weights, 'totalGrams'>): number {
  const { oilGrams, extraFatGrams, alkaliGrams, fragranceGrams } = weights
  return [
    ...[oilGrams, extraFatGrams, defined(alkaliGrams), fragranceGrams].flatMap(
      Object.values<number>,
    ),
    ...weights.acidGrams,
    ...weights.liquidGrams,
    ...weights.additiveGrams,
  ].reduce((total, grams) => total + grams, weights.waterGrams)
}

function defined(grams: Readonly<Partial<Record<string, number>>>): Record<string, number> {
  return Object.fromEntries(Object.entries(grams).map(([key, g]) => [key, g ?? 0]))
}
