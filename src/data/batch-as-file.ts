import type { Actuals } from '../domain/batch/actual/actuals'
import type { BatchOrder } from '../domain/batch/order/order'
import type { OwnOil } from '../domain/blend/own-oil'
import { NO_TESTS, type ReleaseRecord } from '../domain/batch/release/alkali-test'

/** The text of a batch file, as the command line reads it, with what was really weighed and tested, and its own oils. */
export function batchAsFile(
  order: BatchOrder,
  actual: Actuals,
  release: ReleaseRecord = NO_TESTS,
  ownOils: readonly OwnOil[] = [],
): string {
  const carried = ownOils.length > 0 ? { ownOils } : {}
  const weighed = Object.keys(actual).length > 0 ? { actual } : {}
  const tested = release.tests.length > 0 ? { release } : {}
  return `${JSON.stringify({ format: 'barwright-batch/1', ...carried, ...order, ...weighed, ...tested }, null, 2)}\n`
}
