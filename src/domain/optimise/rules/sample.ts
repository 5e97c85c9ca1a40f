import type { BlendSpace } from '../blend-space'
import { mixInto, randomDirection, type Sample, sampleOf } from '../sample'
import { seededRandom } from '../variation/random'
import type { GoOn } from './allowance'
import { PRESENT_PERCENT } from './brief-rules'
import { checkedShares } from './checked'
import { amongOilsOf, anyBlend, type RuledQuestion, towards } from './question'
import { searchFor } from './search'

/** Random directions in which a blend is looked for; those of the same oils make one slice. */
const DIRECTIONS = 120
/** Corners of each slice, as far as they differ. */
const CORNERS_PER_SLICE = 16
/** Most programs for one blend: any will do, so none is worth a long search. */
const MOST_NODES = 200

/**
 * Blends that keep a brief's limits and rules, for looking at what there is: `count` of them, or none
 * where none was found. Mixtures of two blends need not keep the rules, those of the same oils do: so
 * blends are looked for in random directions, and each one's slice, all that its oils can be, is filled
 * by mixing its corners. With steps a slice is the blend alone. A spread to look at, not an even one; the
 * same for the same seed. Yields how much is done, 0 to 1, after every search.
 */
export function* sampleUnderRules(
  space: BlendSpace,
  count: number,
  seed: number,
): Generator<number, Sample, void> {
  const random = seededRandom(seed)
  const any = anyBlend(space)
  const direction = new Float64Array(space.oils.length)
  const slices = new Map<string, Float64Array[]>()
  for (let number = 0; number < DIRECTIONS; number++) {
    randomDirection(space, number, random, direction)
    const found = blendTowards(any, direction)
    if (found) {
      const oils = oilsIn(found)
      if (!slices.has(oils)) slices.set(oils, cornersAround(space, any, found, random))
      else if (any.rules.step > 0) slices.get(oils)?.push(found)
    }
    yield (number + 1) / DIRECTIONS
  }
  return sampleOf(space, filled([...slices.values()], any, count, random))
}

function blendTowards(question: RuledQuestion, direction: Float64Array): Float64Array | undefined {
  const goOn: GoOn = ({ nodes }) => nodes < MOST_NODES
  const outcome = searchFor(towards(question, direction, 'least'), goOn)
  return 'shares' in outcome ? outcome.shares : undefined
}

/** A blend and corners of what its oils can be; each checked against limits and rules. */
function cornersAround(
  space: BlendSpace,
  any: RuledQuestion,
  shares: Float64Array,
  random: () => number,
): Float64Array[] {
  const { brief, library } = space
  checkedShares(brief, library, shares)
  if (any.rules.step > 0) return [shares]
  const slice = amongOilsOf(any, shares)
  const direction = new Float64Array(shares.length)
  const corners = Array.from({ length: CORNERS_PER_SLICE }, (_, number) => {
    randomDirection(space, number, random, direction)
    return blendTowards(slice, direction) ?? shares
  })
  for (const corner of corners) checkedShares(brief, library, corner)
  return [shares, ...corners]
}

/** Rows of random mixtures, each within one slice taken at random; with steps of single blends. */
function filled(
  slices: readonly (readonly Float64Array[])[],
  { rules, shareCount }: RuledQuestion,
  count: number,
  random: () => number,
): Float64Array {
  const sample = new Float64Array(slices.length > 0 ? count * shareCount : 0)
  for (let at = 0; at < sample.length; at += shareCount) {
    const slice = slices[Math.floor(random() * slices.length)] ?? []
    const one = slice[Math.floor(random() * slice.length)]
    mixInto(sample, at, rules.step > 0 && one ? [one] : slice, random)
  }
  return sample
}

function oilsIn(shares: Float64Array): string {
  return [...shares.keys()].filter((oil) => (shares[oil] ?? 0) > PRESENT_PERCENT).join()
}
