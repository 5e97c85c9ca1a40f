import { type Blend, normalised } from '../../blend/blend'
import { type Library, oilOf } from '../../blend/library'
import type { Oil } from '../../blend/oil'
import { fractionFromPercent } from '../../units'
import type { Lot } from './lot'
import { seededRandom } from '../../chance/random'
import { LotSampler } from './sampler'

/** How often to draw, and from where: the same seed gives the same figures. */
export interface Draws {
  readonly count: number
  /** A whole number, 0 to 2^32 - 1. */
  readonly seed: number
}

/** A figure of an oil's lots whose weight average is the blend's. */
export type Figure = (oil: Oil) => (lot: Lot) => number

/**
 * Mixes a blend `count` times, each time from a random lot of each of its oils, drawn apart from one
 * another (`LotSampler`); one array of values per figure, in the figure's unit, in the order of the
 * draws. All figures of one draw are of the same lots.
 */
export function drawFigures(
  blend: Blend,
  library: Library,
  figures: readonly Figure[],
  { count, seed }: Draws,
): Float64Array[] {
  const random = seededRandom(seed)
  const parts = Object.entries(normalised(blend))
    .filter(([, share]) => share > 0)
    .map(([id, share]) => {
      const oil = oilOf(library, id)
      const values = figures.map((figure) => figure(oil))
      return { weight: fractionFromPercent(share), sampler: new LotSampler(oil, random), values }
    })
  const drawn = figures.map(() => new Float64Array(count))
  for (let k = 0; k < count; k++) {
    for (const { weight, sampler, values } of parts) {
      const lot = sampler.draw()
      values.forEach((value, figure) => {
        const into = drawn[figure]
        if (into) into[k] = (into[k] ?? NaN) + weight * value(lot)
      })
    }
  }
  return drawn
}
