import { pricesOf } from '../../domain/optimise/brief/brief'
import { BatchDesk } from '../../state/batch.svelte'
import { madeOnce, useDesks } from './desks.svelte'

export const batchDesk = madeOnce(
  ({ work, explorer }) =>
    new BatchDesk(
      work,
      () => explorer.inHand,
      () => ({ name: explorer.draft.name, prices: pricesOf(explorer.brief) }),
    ),
)

/** The batch of the blend in hand. */
export const useBatch = (): BatchDesk => batchDesk(useDesks())
