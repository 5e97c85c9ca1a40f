/** Readers of files, which nobody needs before there is one. */
export const LATE_READERS = {
  batch: () => import('../data/open-batch'),
  brief: () => import('../data/open-brief'),
} as const
