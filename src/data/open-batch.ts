import type { Actuals } from '../domain/batch/actual/actuals'
import { checkOrder } from '../domain/batch/check/check-order'
import type { BatchOrder } from '../domain/batch/order/order'
import type { ReleaseRecord } from '../domain/batch/release/alkali-test'
import type { OwnOil } from '../domain/blend/own-oil'
import { batchFacts } from './batch-facts'
import { batchFile, orderOf } from './batch-file'
import type { Library } from './library'
import { withOwnOils } from './own-oil-file'
import { type Parsed, parseJson } from './problems'

/** A batch as it was saved: what was asked, what was really weighed, what is known of the bars. */
export interface OpenedBatch {
  readonly order: BatchOrder
  readonly actual: Actuals
  readonly release: ReleaseRecord | undefined
  /** Oils of one's own that came with it. */
  readonly ownOils: readonly OwnOil[]
}

/** Reads a batch for the page from the text of a file; one that could not be weighed out is refused. */
export function openBatch(text: string, library: Library): Parsed<OpenedBatch> {
  const parsed = parseJson(batchFile, text)
  if (parsed.status === 'invalid') return parsed
  const order = orderOf(parsed.value)
  const { actual = {}, release, ownOils = [] } = parsed.value
  const known = withOwnOils(library, ownOils)
  if (known.status === 'invalid') return known
  const problems = checkOrder(order, known.value, batchFacts)
  if (problems.length > 0) return { status: 'invalid', problems }
  return { status: 'parsed', value: { order, actual, release, ownOils } }
}
