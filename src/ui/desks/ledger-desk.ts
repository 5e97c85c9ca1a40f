import { today } from '../../data/today'
import { LedgerDesk } from '../../state/ledger.svelte'
import { batchDesk } from './batch-desk'
import { madeOnce, useDesks } from './desks.svelte'

const ledgerDesk = madeOnce(
  (desks) => new LedgerDesk(desks.work, () => batchDesk(desks).order, today()),
)

/** Prices, costs and quotes. */
export const useLedger = (): LedgerDesk => ledgerDesk(useDesks())
