import { library } from '../../src/data/library'
import type { BriefFile } from '../../src/data/brief-file'
import { at, Random, shuffled } from '../generator/random'

/** The wish that is moved; asking for more of it changes both the cheapest blend and the region. */
export const MOVED = { id: 'conditioning', name: 'Conditioning', from: 57, to: 69 }

const OILS = 40
const SEED = 5
const LEAST_PRICE = 2
const PRICE_SPAN = 12

/** A brief over forty oils of the library with invented prices, shown on hardness and lather. */
export function fortyOils(): BriefFile {
  const random = new Random(SEED)
  const ids = [...library.oils.keys()]
  const price = () => Math.round((LEAST_PRICE + PRICE_SPAN * random.next()) * 100) / 100
  return {
    format: 'barwright-brief/1',
    oils: Object.fromEntries(
      shuffled(random, ids.length)
        .slice(0, OILS)
        .map((k) => [at(ids, k), { pricePerKg: price(), max: random.int(10, 50) }]),
    ),
    groups: [],
    measures: {
      hardness: { min: 34, max: 50 },
      lather: { min: 20 },
      [MOVED.id]: { min: MOVED.from },
      mildness: { min: 50 },
      wear: { max: 60 },
    },
    goal: { minimise: 'cost' },
  }
}
