import type { PlaceId } from './place.svelte'

/** The places that are not part of the first page, and what loads them. */
export const LATE_PLACES = {
  bench: () => import('./bench/BenchPage.svelte'),
  batch: () => import('./batch/BatchPage.svelte'),
  ledger: () => import('./ledger/LedgerPage.svelte'),
} as const satisfies Partial<Record<PlaceId, unknown>>

/** Parts of the first places that are loaded late too. */
export const LATE_PARTS = {
  oil: () => import('./bar/oil/OwnOil.svelte'),
} as const
