import type { Brief } from '../domain/optimise/brief/brief'
import { type Limit, withLimit } from '../domain/optimise/brief/limits'
import { type Draft, openGroups, type ShelfRow, withRow } from './draft'

/** A limit and the value it goes to. */
export interface LimitMove {
  readonly limit: Limit
  readonly to: number
}

/** The draft with several limits of its brief moved, each on top of the ones before. */
export function withLimitsMoved(draft: Draft, brief: Brief, moves: readonly LimitMove[]): Draft {
  const [first, ...rest] = moves
  if (!first) return draft
  const moved = withLimitMoved(draft, brief, first.limit, first.to)
  return withLimitsMoved(moved, withLimit(brief, first.limit, first.to), rest)
}

/**
 * The draft with one limit of its brief moved to another value, wherever the draft keeps it: as typed,
 * in a lock, or in what is there of an oil.
 */
export function withLimitMoved(draft: Draft, brief: Brief, limit: Limit, to: number): Draft {
  const { kind, subject, side } = limit
  if (kind === 'measure') return { ...draft, wishes: withLimit(brief, limit, to).measures }
  if (kind === 'oil') return withOilLimitMoved(draft, brief, limit, to)
  const at = openGroups(draft)[Number(subject)]?.at
  const groups = draft.groups.map((group, n) => (n === at ? { ...group, [side]: to } : group))
  return { ...draft, groups }
}

/** Both ends as they are in force are written out, since one of them may come from the lock or stock. */
function withOilLimitMoved(
  draft: Draft,
  brief: Brief,
  { subject, side }: Limit,
  to: number,
): Draft {
  const row = draft.shelf.find(({ oil }) => oil === subject)
  const { min, max } = brief.oils[subject] ?? {}
  if (!row) return draft
  return withRow(draft, subject, {
    ...(row.lockedAt !== undefined || row.stock?.use === 'all' ? { min, max } : {}),
    [side]: to,
    lockedAt: undefined,
    stock: looserStock(row, side),
  })
}

/** More than is there must be bought; less than all is at most what is there. */
function looserStock({ stock }: ShelfRow, side: Limit['side']): ShelfRow['stock'] {
  if (!stock || stock.use === 'buy') return stock
  if (side === 'max') return { ...stock, use: 'buy' }
  return { ...stock, use: 'at most' }
}
