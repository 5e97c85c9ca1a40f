import type { Actuals } from '../domain/batch/actual/actuals'
import type { BatchOrder } from '../domain/batch/order/order'
import { NO_TESTS, type ReleaseRecord } from '../domain/batch/release/alkali-test'

/** The text of a batch file, as the command line reads it, with what was really weighed and tested. */
export function batchAsFile(
  order: BatchOrder,
  actual: Actuals,
  release: ReleaseRecord = NO_TESTS,
): string {
  const weighed = Object.keys(actual).length > 0 ? { actual } : {}
  const tested = release.tests.length > 0 ? { release } : {}
  return `${JSON.stringify({ format: 'barwright-batch/1', ...order, ...weighed, ...tested }, null, 2)}\n`
}
