import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import type { CurePlan } from '../../../src/domain/batch/react/cure'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { planBatch, type ReadyPlan } from '../../../src/domain/batch/result/plan'
import type { Library } from '../../../src/domain/blend/library'
import type { OilKind } from '../../../src/domain/blend/oil'
import { libraryOfSaponification } from '../blend/stub-library'

/** A kilogram of oils with nothing unusual, to be varied by a test. */
export const PLAIN: BatchOrder = {
  blend: { olive: 70, coconut: 30 },
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: {},
  superfat: 5,
  water: { ratio: 2 },
}

/** A plan with all the data files, or the reason why there is none. */
export function ready(order: Partial<BatchOrder>, from: Library = library): ReadyPlan {
  const plan = planBatch({ ...PLAIN, ...order }, from, batchFacts)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  return plan
}

/** How the bars of a plan dry; a paste has no cure, and is not asked for one. */
export function cureOf({ cure }: ReadyPlan): CurePlan {
  if (!cure) throw new Error('A paste has no cure')
  return cure
}

/** Problems of an order with all the data files. */
export function problemsOf(order: Partial<BatchOrder>, from: Library = library) {
  const plan = planBatch({ ...PLAIN, ...order }, from, batchFacts)
  return plan.status === 'invalid' ? plan.problems : []
}

/** A library of stated saponification values in which some oils are free acids or waxes. */
export function libraryOf(
  values: Parameters<typeof libraryOfSaponification>[0],
  kinds: Readonly<Record<string, OilKind>> = {},
): Library {
  const stub = libraryOfSaponification(values)
  const oils = [...stub.oils].map(
    ([id, oil]) => [id, { ...oil, kind: kinds[id] ?? oil.kind }] as const,
  )
  return { ...stub, oils: new Map(oils) }
}

/** Whether a value lies within a tolerance of the expected one. */
export function near(expected: number, tolerance: number) {
  return (value: number) => Math.abs(value - expected) <= tolerance
}
