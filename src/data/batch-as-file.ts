import type { Actuals } from '../domain/batch/actuals'
import type { BatchOrder } from '../domain/batch/order'

/** The text of a batch file, as the command line reads it, with what was really weighed. */
export function batchAsFile(order: BatchOrder, actual: Actuals): string {
  const weighed = Object.keys(actual).length > 0 ? { actual } : {}
  return `${JSON.stringify({ format: 'barwright-batch/1', ...order, ...weighed }, null, 2)}\n`
}
