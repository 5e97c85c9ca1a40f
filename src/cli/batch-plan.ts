import { batchFacts } from '../data/batch-facts'
import { batchFile, orderOf } from '../data/batch-file'
import { alkaliLimits } from '../data/free-alkali'
import { library } from '../data/library'
import { parseJson } from '../data/problems'
import { today } from '../data/today'
import type { Actuals } from '../domain/batch/actual/actuals'
import { planBatch, type ReadyPlan } from '../domain/batch/result/plan'
import { NO_TESTS } from '../domain/batch/release/alkali-test'
import { type Release, releaseAnswer } from '../domain/batch/release/release'
import type { Problem } from '../domain/blend/check-blend'

/** A batch file read and planned, or what is wrong with it. */
export type PlannedFile =
  | {
      readonly status: 'ready'
      readonly plan: ReadyPlan
      readonly actual: Actuals | undefined
      readonly release: Release
    }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Reads a batch file and plans it with all that the data files know. */
export function planFile(text: string): PlannedFile {
  const file = parseJson(batchFile, text)
  if (file.status === 'invalid') return file
  const plan = planBatch(orderOf(file.value), library, batchFacts)
  if (plan.status === 'invalid') return plan
  const { actual, release: record = NO_TESTS } = file.value
  const made = { order: plan.order, actual: actual ?? {}, record }
  const tested = releaseAnswer(made, alkaliLimits, today())
  if (tested.status === 'invalid') return tested
  return { status: 'ready', plan, actual, release: tested.release }
}
