import type { Actuals } from '../domain/batch/actual/actuals'
import { checkOrder } from '../domain/batch/check/check-order'
import type { BatchOrder } from '../domain/batch/order/order'
import type { ReleaseRecord } from '../domain/batch/release/alkali-test'
import type { Library } from '../domain/blend/library'
import { batchFacts } from './batch-facts'
import { batchFile, orderOf } from './batch-file'
import { type Parsed, parseJson } from './problems'

/** A batch as it was saved: what was asked, what was really weighed, what is known of the bars. */
export interface OpenedBatch {
  readonly order: BatchOrder
  readonly actual: Actuals
  readonly release: ReleaseRecord | undefined
}

/** Reads a batch for the page from the text of a file; one that could not be weighed out is refused. */
export function openBatch(text: string, library: Library): Parsed<OpenedBatch> {
  const parsed = parseJson(batchFile, text)
  if (parsed.status === 'invalid') return parsed
  const order = orderOf(parsed.value)
  const problems = checkOrder(order, library, batchFacts)
  if (problems.length > 0) return { status: 'invalid', problems }
  const { actual = {}, release } = parsed.value
  return { status: 'parsed', value: { order, actual, release } }
}
