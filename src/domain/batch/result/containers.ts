import { ML_PER_LITRE } from '../../units'
import { processOf } from '../react/cure'
import { factOf } from '../order/facts'
import type { LyeHeat } from '../react/heat'
import type { BatchOrder } from '../order/order'
import type { Reckoning } from '../weigh/reckoning'

/** What to make it in, ml of the vessel's own volume. */
export interface Containers {
  readonly jugMl: number
  readonly potMl: number
}

/** Sizes that jugs and pots are sold in, litres. */
const SIZES_L = [0.25, 0.5, 1, 2, 3, 5, 10, 15, 20, 30, 50, 100]

/** How many times what is in it a vessel holds: common practice. A hot-process pot is at most half full. */
const TIMES = { jug: 2, foamingJug: 4, coldPot: 1.5, hotPot: 2 }

/** The vessels to use: the next size up from the volume times room for foam and stirring. */
export function containersFor(reckoning: Reckoning, heat: LyeHeat, batterMl: number): Containers {
  const { order } = reckoning
  const jug = foams(order, reckoning) ? TIMES.foamingJug : TIMES.jug
  const pot = processOf(order) === 'hot' ? TIMES.hotPot : TIMES.coldPot
  return { jugMl: nextSizeMl(heat.volumeMl * jug), potMl: nextSizeMl(batterMl * pot) }
}

function foams({ liquids = [] }: BatchOrder, { facts }: Reckoning): boolean {
  return liquids.some(({ liquid, when }) => when === 'lye' && factOf(facts.liquids, liquid).heatsUp)
}

/** The next size sold, or whole hundreds of litres above them. */
function nextSizeMl(ml: number): number {
  const largest = 100
  const size = SIZES_L.find((litres) => litres * ML_PER_LITRE >= ml)
  return (size ?? Math.ceil(ml / ML_PER_LITRE / largest) * largest) * ML_PER_LITRE
}
