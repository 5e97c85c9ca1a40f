import type { BlendSpace } from '../space/blend-space'
import { seededRandom } from '../../chance/random'

/** A sample of what a brief allows, as flat arrays: one row after another. */
export interface Sample {
  readonly oils: readonly string[]
  readonly measures: readonly string[]
  readonly count: number
  /** Shares in percent, `oils.length` a row. */
  readonly shares: Float64Array
  /** Values of the measures in their own units, `measures.length` a row. */
  readonly values: Float64Array
}

/** Samples a space and reckons every measure of every blend. */
export function sampleSpace(space: BlendSpace, count: number, seed: number): Sample {
  return sampleOf(space, sampleBlends(space, count, seed))
}

/** Blends, one row of shares after another, with every measure of each. */
export function sampleOf(space: BlendSpace, shares: Float64Array): Sample {
  const { oils, measures } = space
  const rows = shares.length / oils.length
  const values = new Float64Array(rows * measures.length)
  measures.forEach((measure, column) => {
    const perPercent = space.perPercent(measure)
    for (let row = 0; row < rows; row++) {
      let value = 0
      for (let oil = 0; oil < oils.length; oil++)
        value += (perPercent[oil] ?? 0) * (shares[row * oils.length + oil] ?? 0)
      values[row * measures.length + column] = value
    }
  })
  return { oils, measures, count: rows, shares, values }
}

/** Corners whose mixtures the sample is made of, per draw of the corner pool. */
const POOL = 240
/** A sampled blend mixes so many corners at most. */
const MOST_MIXED = 4

/**
 * Blends that keep a brief, for looking at what there is: `count` rows of shares in percent, one after
 * another, in the order of the space's oils. Each mixes one to four corners of the space at random, so
 * every one of them is a blend that keeps the limits (the space is convex), and edges and corners are
 * met as well as the middle. This is a spread to look at, not an even one. Deterministic for a seed.
 * Empty where no blend keeps the brief.
 */
export function sampleBlends(space: BlendSpace, count: number, seed: number): Float64Array {
  const random = seededRandom(seed)
  const corners = cornerPool(space, random)
  const width = space.oils.length
  const sample = new Float64Array(corners.length > 0 ? count * width : 0)
  for (let at = 0; at < sample.length; at += width) mixInto(sample, at, corners, random)
  return sample
}

/** Writes a random mixture of one to four of some corners into a row of a sample. */
export function mixInto(
  sample: Float64Array,
  at: number,
  corners: readonly Float64Array[],
  random: () => number,
): void {
  const mixed = 1 + Math.floor(random() * MOST_MIXED)
  const weights = Array.from({ length: mixed }, () => -Math.log(1 - random()))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  for (const weight of weights) {
    const corner = corners[Math.floor(random() * corners.length)]
    if (!corner) throw new Error('A sample without corners')
    corner.forEach((share, oil) => {
      sample[at + oil] = (sample[at + oil] ?? 0) + (share * weight) / total
    })
  }
}

/** Corners found by random directions: over measures, which find the ends people look for, and over oils. */
function cornerPool(space: BlendSpace, random: () => number): Float64Array[] {
  const corners: Float64Array[] = []
  const direction = new Float64Array(space.oils.length)
  for (let i = 0; i < POOL; i++) {
    randomDirection(space, i, random, direction)
    const found = space.least(direction)
    if (!found) return []
    corners.push(found.x.slice())
  }
  return corners
}

/** A random direction: over measures for even numbers, over oils for odd ones. */
export function randomDirection(
  space: BlendSpace,
  number: number,
  random: () => number,
  into: Float64Array,
): void {
  if (number % 2 === 0) overMeasures(space, random, into)
  else for (let oil = 0; oil < into.length; oil++) into[oil] = random() - 0.5
}

/** A random mixture of the measures, each counted by its spread over the oils. */
function overMeasures(space: BlendSpace, random: () => number, into: Float64Array): void {
  into.fill(0)
  for (const measure of space.measures) {
    const values = space.perPercent(measure)
    const spread = Math.max(...values) - Math.min(...values) || 1
    const weight = (random() - 0.5) / spread
    for (let oil = 0; oil < into.length; oil++)
      into[oil] = (into[oil] ?? 0) + weight * (values[oil] ?? 0)
  }
}
