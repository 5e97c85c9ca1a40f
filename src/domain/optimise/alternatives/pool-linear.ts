import { seededRandom } from '../../chance/random'
import type { NearOptimal } from './near-optimal'

/** A share below this is none when oils in use are counted, in percent of oil weight. */
const UNUSED_PERCENT = 1e-6

/** Most hops; with eight, the choice was hardly better than with four (measured, see DEFAULT_POOL). */
const HOPS = 4

/**
 * Corners of the near-optimal blends to choose from, each an array of shares; some may come twice.
 *
 * Hop, skip and jump first: each hop uses as little as it can of the oils used so far, each counted as
 * often as it was used (E.D. Brill, S.-Y. Chang, L.D. Hopkins, Management Science 28 (1982) 221). The
 * first hop is about as far from the best as blends get, but later ones drift together. So then
 * `count` corners in random directions, a cost of -1/2 to 1/2 drawn evenly for each oil, which meets
 * corners in proportion to the angle they are seen under: the sharp, far ones most.
 */
export function cornerPool(near: NearOptimal, count: number, seed: number): Float64Array[] {
  const random = seededRandom(seed)
  const cost = new Float64Array(near.best.length)
  const directions = Array.from({ length: count }, () => {
    for (let oil = 0; oil < cost.length; oil++) cost[oil] = random() - 0.5
    return near.corner(cost)
  })
  return [...hops(near), ...directions]
}

function hops(near: NearOptimal): Float64Array[] {
  const uses = new Float64Array(near.best.length)
  const found: Float64Array[] = []
  let last = near.best
  for (let hop = 0; hop < HOPS; hop++) {
    last.forEach((share, oil) => {
      if (share > UNUSED_PERCENT) uses[oil] = (uses[oil] ?? 0) + 1
    })
    last = near.corner(uses)
    found.push(last)
  }
  return found
}
