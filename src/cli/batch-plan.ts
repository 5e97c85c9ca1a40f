import { batchFacts } from '../data/batch-facts'
import { batchFile, orderOf } from '../data/batch-file'
import { library } from '../data/library'
import { parseJson } from '../data/problems'
import type { Actuals } from '../domain/batch/actuals'
import { planBatch, type ReadyPlan } from '../domain/batch/plan'
import type { Problem } from '../domain/blend/check-blend'

/** A batch file read and planned, or what is wrong with it. */
export type PlannedFile =
  | {
      readonly status: 'ready'
      readonly plan: ReadyPlan
      readonly actual: Actuals | undefined
    }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Reads a batch file and plans it with all that the data files know. */
export function planFile(text: string): PlannedFile {
  const file = parseJson(batchFile, text)
  if (file.status === 'invalid') return file
  const plan = planBatch(orderOf(file.value), library, batchFacts)
  if (plan.status === 'invalid') return plan
  return { status: 'ready', plan, actual: file.value.actual }
}
