import type { OpenedBatch } from '../data/open-batch'
import { WHOLE_PERCENT } from '../domain/units'
import { withTaken } from './bar'
import { NOTHING_DONE } from './batch-choices'
import { choicesOf } from './batch-from-order'
import type { Work } from './work'

/** A file that states no purity means pure hydroxide, percent. */
const PURE = { naoh: WHOLE_PERCENT, koh: WHOLE_PERCENT } as const

/** The work with a batch from a file in hand: its blend as the bar, its order, weights and tests as they were. */
export function withBatch(
  work: Work,
  { order, actual, release }: Omit<OpenedBatch, 'ownOils'>,
): Work {
  const { bar: _bar, pasting: _pasting, ...rest } = work
  const run = Object.keys(actual).length > 0 ? { ...NOTHING_DONE, actual } : undefined
  return {
    ...withTaken(rest, order.blend),
    batch: { ...choicesOf(order, work.batch, PURE), run, release },
  }
}
