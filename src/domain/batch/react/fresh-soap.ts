import { percentFromFraction } from '../../units'
import type { Outcome } from './balance'
import type { CurePlan } from './cure'
import type { Reckoning } from '../weigh/reckoning'

/** Soap as it leaves the pot, before anything dries. */
export interface FreshSoap {
  /** All weighed, less what the cook boils off, g. */
  readonly freshG: number
  readonly boiledOffG: number
  /** Of the fresh soap, percent. */
  readonly moisturePercent: number
  readonly fattyMatterPercent: number
  readonly glycerolPercent: number
}

/** What leaves the pot. */
export function freshSoap({ weights }: Reckoning, outcome: Outcome): FreshSoap {
  const boiledOffG = weights.water.cookG
  const freshG = weights.totalGrams - boiledOffG
  const percent = (grams: number) => percentFromFraction(grams / freshG)
  return {
    freshG,
    boiledOffG,
    moisturePercent: percent(outcome.balance.waterG - boiledOffG),
    fattyMatterPercent: percent(outcome.totalFattyMatterG),
    glycerolPercent: percent(outcome.balance.glycerolG),
  }
}

/** All of a batch as it is used, g: bars usually dry and at their driest; a paste, which does not dry, fresh. */
export function finishedG(plan: { readonly cure: CurePlan | null; readonly fresh: FreshSoap }) {
  const { cure, fresh } = plan
  return cure
    ? { usualG: cure.curedG, leastG: cure.driestG }
    : { usualG: fresh.freshG, leastG: fresh.freshG }
}
