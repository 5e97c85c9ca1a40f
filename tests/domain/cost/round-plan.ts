import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import { planBatch, type ReadyPlan } from '../../../src/domain/batch/result/plan'
import type { CostChoices } from '../../../src/domain/cost/run-cost'
import { bookOf, offer, TODAY } from './books'

/** A batch of round figures, with only what a cost is reckoned from. */
export function roundPlan(): ReadyPlan {
  const plan = planBatch(
    {
      blend: { olive: 70, coconut: 30 },
      oilGrams: 5000,
      alkali: { naoh: 100 },
      purity: { naoh: 100 },
      superfat: 5,
      water: { ratio: 2 },
      cut: { barGrams: 125 },
    },
    library,
    batchFacts,
  )
  if (plan.status !== 'ready' || !plan.cure) throw new Error('The batch can be planned')
  const [line] = plan.ingredients
  if (!line) throw new Error('The batch weighs something')
  const weigh = (kind: 'oil' | 'alkali', id: string, grams: number) => ({
    ...line,
    key: id,
    kind,
    id,
    grams,
  })
  return {
    ...plan,
    ingredients: [
      weigh('oil', 'olive', 3500),
      weigh('oil', 'coconut', 1500),
      weigh('alkali', 'naoh', 700),
    ],
    fresh: { ...plan.fresh, freshG: 7200 },
    cure: { ...plan.cure, freshG: 7200, curedG: 6300 },
    bars: { count: 56, wetG: 125, curedG: 109.375, driestG: 105, leftOverG: 200 },
  }
}

export const OFFERS = [
  offer('olive', 5, 'kg', 3550),
  offer('coconut', 1, 'kg', 420),
  offer('naoh', 1, 'kg', 390),
  offer('carton', 100, 'piece', 1200),
]
export const PRICING = {
  book: bookOf(OFFERS, { materials: [{ id: 'carton', name: 'Carton' }] }),
  materialOf: (id: string) => ({ name: id }),
  on: TODAY,
}
export const COSTS: CostChoices = {
  charge: 'proRata',
  wastePercent: 0,
  packaging: [{ material: 'carton', perBar: 1 }],
  minutesPerBatch: 95,
  minutesPerBar: 1.5,
  rateMinorPerHour: 1620,
  overheadMinorPerBatch: 250,
  overheadMinorPerMonth: 14000,
  batchesPerMonth: 16,
  rejectPercent: 5,
}
