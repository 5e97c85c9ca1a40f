import { batchFacts } from '../data/batch-facts'
import { batchFile, orderOf, type ReadBatchFile } from '../data/batch-file'
import { alkaliLimits } from '../data/free-alkali'
import type { Library } from '../data/library'
import { parseJson } from '../data/problems'
import { today } from '../data/today'
import type { Actuals } from '../domain/batch/actual/actuals'
import { planBatch, type ReadyPlan } from '../domain/batch/result/plan'
import { NO_TESTS } from '../domain/batch/release/alkali-test'
import { type Release, releaseAnswer } from '../domain/batch/release/release'
import type { Problem } from '../domain/blend/check-blend'
import type { Flags } from './command'
import { libraryFor } from './own-oils'
import type { Surroundings } from './surroundings'

/** A batch file read and planned, or what is wrong with it. */
export type PlannedFile =
  | {
      readonly status: 'ready'
      readonly plan: ReadyPlan
      /** The library with the maker's own oils. */
      readonly library: Library
      readonly actual: Actuals | undefined
      readonly release: Release
    }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Reads a batch file and plans it with all that the data files and the maker's own oils know. */
export async function planFile(
  text: string,
  flags: Flags,
  around: Surroundings,
): Promise<PlannedFile> {
  const file = parseJson(batchFile, text)
  if (file.status === 'invalid') return file
  const read = await libraryFor(file.value.ownOils, flags, around)
  return read.status === 'invalid' ? read : planOf(file.value, read.value)
}

/** Plans what a batch file says, with the oils of a library. */
export function planOf(file: ReadBatchFile, library: Library): PlannedFile {
  const plan = planBatch(orderOf(file), library, batchFacts)
  if (plan.status === 'invalid') return plan
  const { actual, release: record = NO_TESTS } = file
  const made = { order: plan.order, actual: actual ?? {}, record }
  const tested = releaseAnswer(made, alkaliLimits, today())
  if (tested.status === 'invalid') return tested
  return { status: 'ready', plan, library, actual, release: tested.release }
}
