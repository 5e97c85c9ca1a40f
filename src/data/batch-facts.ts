import type { BatchFacts } from '../domain/batch/order/facts'
import { acids, additives, liquids } from './additions-file'
import { scents } from './fragrance-file'
import { lyeTables } from './lye-file'

/** All that a batch can be reckoned with beside oils. */
export const batchFacts: BatchFacts = {
  acids: byId(acids),
  liquids: byId(liquids),
  additives: byId(additives),
  scents: byId(scents),
  lye: lyeTables,
}

function byId<T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  return new Map(items.map((item) => [item.id, item]))
}
