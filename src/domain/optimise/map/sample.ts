import { statesRules } from '../brief/brief-rules'
import type { BlendSpace } from '../space/blend-space'
import { type Sample, sampleSpace } from './sample-linear'
import { sampleUnderRules } from './sample-ruled'

/**
 * Blends that keep a brief, for looking at what there is, with every measure of each; the same for the same
 * seed. Under rules it yields how much is done, 0 to 1, after every search.
 */
export function* sampleOfSpace(
  space: BlendSpace,
  count: number,
  seed: number,
): Generator<number, Sample, void> {
  return statesRules(space.brief)
    ? yield* sampleUnderRules(space, count, seed)
    : sampleSpace(space, count, seed)
}
