import type { BatchOrder } from './order'

/** Where the water of an order is said, as the path of a problem. */
export function waterPath({ water }: BatchOrder): string {
  const [way] = Object.keys(water)
  return way === undefined || way === 'onlyFromLiquids' ? 'water' : `water.${way}`
}
