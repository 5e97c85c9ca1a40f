import type { BlendSpace } from '../space/blend-space'
import { mixInto, randomDirection, type Sample, sampleOf } from './sample-linear'
import { seededRandom } from '../../chance/random'
import type { GoOn } from '../search/allowance'
import { PRESENT_PERCENT } from '../brief/brief-rules'
import { checkedBlend } from '../space/found'
import { amongOilsOf, anyBlend, type RuledQuestion, towards, within } from '../search/question'
import { searchFor } from '../search/search'

/** Random directions in which a blend is looked for; those of the same oils make one slice. */
const DIRECTIONS = 120
/** The same where shares go in steps, and every direction gives one blend at most. */
const DIRECTIONS_IN_STEPS = 480
/** Blends to be met in steps before those between them are looked for. */
const LEAST_MET = 2
/** Corners of each slice, as far as they differ. */
const CORNERS_PER_SLICE = 16
/** Most programs for one blend: any will do, so none is worth a long search. */
const MOST_NODES = 200

/**
 * Blends that keep a brief's limits and rules, for looking at what there is: `count` of them, or none
 * where none was found. Mixtures of two blends need not keep the rules, those of the same oils do: so
 * blends are looked for in random directions, and each one's slice, all that its oils can be, is filled
 * by mixing its corners. With steps a slice is the blend alone, and the sample has each blend found once,
 * so fewer than asked for. A spread to look at, not an even one; the same for the same seed. Yields how
 * much is done, 0 to 1, after every search.
 */
export function* sampleUnderRules(
  space: BlendSpace,
  count: number,
  seed: number,
): Generator<number, Sample, void> {
  const random = seededRandom(seed)
  const any = anyBlend(space)
  const direction = new Float64Array(space.oils.length)
  const inSteps = any.rules.step > 0
  const directions = inSteps ? DIRECTIONS_IN_STEPS : DIRECTIONS
  const slices = new Map<string, Float64Array[]>()
  for (let number = 0; number < directions; number++) {
    randomDirection(space, number, random, direction)
    const asked = inSteps ? beyondSome(any, direction, [...slices.values()].flat(), random) : any
    const found = blendTowards(asked, direction)
    const slice = found && (inSteps ? inWholeSteps(found, any.rules.step) : oilsIn(found))
    if (found && slice !== undefined && !slices.has(slice))
      slices.set(slice, cornersAround(space, any, found, random))
    yield (number + 1) / directions
  }
  const all = [...slices.values()]
  const shares = inSteps
    ? Float64Array.from(
        all
          .flat()
          .slice(0, count)
          .flatMap((blend) => [...blend]),
      )
    : filled(all, any.shareCount, count, random)
  return sampleOf(space, shares)
}

/**
 * The question held to blends no better in a direction than somewhere between the ends met so far: the
 * best in every direction are extremes, and with steps no mixing fills what lies between them.
 */
function beyondSome(
  any: RuledQuestion,
  direction: Float64Array,
  met: readonly Float64Array[],
  random: () => number,
): RuledQuestion {
  if (met.length < LEAST_MET) return any
  const values = met.map((shares) =>
    shares.reduce((sum, share, oil) => sum + share * (direction[oil] ?? NaN), 0),
  )
  const [least, most] = [Math.min(...values), Math.max(...values)]
  return within(any, direction, least + random() * (most - least), Infinity)
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
  checkedBlend(space.check, shares)
  if (any.rules.step > 0) return [shares]
  const slice = amongOilsOf(any, shares)
  const direction = new Float64Array(shares.length)
  const corners = Array.from({ length: CORNERS_PER_SLICE }, (_, number) => {
    randomDirection(space, number, random, direction)
    return blendTowards(slice, direction) ?? shares
  })
  for (const corner of corners) checkedBlend(space.check, corner)
  return [shares, ...corners]
}

/** Rows of random mixtures, each within one slice taken at random. */
function filled(
  slices: readonly (readonly Float64Array[])[],
  shareCount: number,
  count: number,
  random: () => number,
): Float64Array {
  const sample = new Float64Array(slices.length > 0 ? count * shareCount : 0)
  for (let at = 0; at < sample.length; at += shareCount)
    mixInto(sample, at, slices[Math.floor(random() * slices.length)] ?? [], random)
  return sample
}

/** Shares as whole numbers of steps, to tell blends apart. */
function inWholeSteps(shares: Float64Array, step: number): string {
  return shares.map((share) => Math.round(share / step)).join()
}

function oilsIn(shares: Float64Array): string {
  return [...shares.keys()].filter((oil) => (shares[oil] ?? 0) > PRESENT_PERCENT).join()
}
