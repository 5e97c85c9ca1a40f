import { GRAMS_PER_KG } from '../units'
import { type CostGroup, GROUP_ORDER, type RunCost } from './run-cost'

/** What money is told for. */
export type CostUnit = 'bar' | 'batch' | 'kg'

/** Where money is lost on the way. */
export type Loss = 'trimmings' | 'rejects' | 'cure'

/** One step of where the money goes, in minor units of money, unrounded. */
export interface WaterfallStep {
  readonly what: CostGroup | Loss
  readonly value: number
}

/** The steps and their sum. */
export interface Waterfall {
  readonly unit: CostUnit
  readonly steps: readonly WaterfallStep[]
  readonly total: number
}

/**
 * Where the money of one bar, one batch or one kg of cured soap goes. What is weighed and worked is told as
 * if all that is poured became bars that sell; trimmings, rejects and, for a kg, the weight lost in the
 * cure are then what these losses add. So the steps add up to the cost. Steps of 0 are left out.
 */
export function waterfallOf({ lines, yield: run, totalMinor }: RunCost, unit: CostUnit): Waterfall {
  const ofGroup = (group: CostGroup) =>
    lines.reduce((sum, line) => (line.group === group ? sum + line.minor : sum), 0)
  const packaging = ofGroup('packaging')
  const made = totalMinor - packaging
  const { pouredBars, cutBars, goodBars } = run
  const perBar: WaterfallStep[] = [
    ...GROUP_ORDER.filter((group) => group !== 'packaging').map((group) => ({
      what: group,
      value: ofGroup(group) / pouredBars,
    })),
    { what: 'trimmings', value: made / cutBars - made / pouredBars },
    { what: 'rejects', value: made / goodBars - made / cutBars },
    { what: 'packaging', value: packaging / goodBars },
  ]
  const factor = factorOf(unit, run)
  const steps = [
    ...perBar.map(({ what, value }) => ({ what, value: value * factor })),
    { what: 'cure' as const, value: unit === 'kg' ? cureLoss(totalMinor / goodBars, run) : 0 },
  ].filter(({ value }) => Math.abs(value) > NOTHING_MINOR)
  return { unit, steps, total: steps.reduce((sum, { value }) => sum + value, 0) }
}

/** Less is noise of floating point, minor units. */
const NOTHING_MINOR = 1e-6

function factorOf(unit: CostUnit, { goodBars, batches, wetG }: RunCost['yield']): number {
  if (unit === 'bar') return 1
  return unit === 'batch' ? goodBars / batches : GRAMS_PER_KG / wetG
}

function cureLoss(perBar: number, { wetG, curedG }: RunCost['yield']): number {
  return perBar * (GRAMS_PER_KG / curedG - GRAMS_PER_KG / wetG)
}
