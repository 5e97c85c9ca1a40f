import { shuffler } from 'd3-array'
import { randomLcg, randomNormal } from 'd3-random'

/** How many batches are drawn. One in 200 is then 50 of them, known to within a fifth. */
export const DRAWS = 10_000

/** The seed of every draw, so that the same order always gives the same answer. */
const SEED = 0.1117

/** Seeds of two kinds of rows, far enough apart that no batch holds as many. */
const ROWS_APART = 1000

const normals: Float64Array[] = []
const evens: Float64Array[] = []

/**
 * Standard normal deviates, one for each batch drawn: the row of one thing that varies by itself, such as
 * the lot of one oil. The same row is always the same figures.
 */
export function normalRow(row: number): Float64Array {
  const known = normals[row]
  if (known) return known
  const next = randomNormal.source(randomLcg(seedOf(row)))(0, 1)
  return (normals[row] = Float64Array.from({ length: DRAWS }, next))
}

/**
 * The same, even over 0 to 1: one figure in each ten-thousandth, in an order of its own, so that each row
 * fills its range evenly.
 */
export function evenRow(row: number): Float64Array {
  const known = evens[row]
  if (known) return known
  const next = randomLcg(seedOf(row + ROWS_APART))
  const figures = Array.from({ length: DRAWS }, (_, i) => (i + next()) / DRAWS)
  return (evens[row] = Float64Array.from(shuffler(next)(figures)))
}

/** A linear congruential generator takes a seed of 0 to 1. */
function seedOf(row: number): number {
  const golden = (Math.sqrt(5) - 1) / 2
  return (SEED + row * golden) % 1
}

/** The chance that the upper bound of a share lies below the true one, 1 in 100, as a normal deviate. */
const ONE_IN_HUNDRED = 2.326347874

/**
 * The share that so many of the draws stand for at the most, at one-sided 99 % (Wilson 1927, score
 * interval): the draws' own error, on the safe side. By hand: none of 10,000 is at most 5.41e-4.
 */
export function shareAtMost(hits: number, draws = DRAWS): number {
  const z2 = ONE_IN_HUNDRED ** 2
  const p = hits / draws
  const middle = p + z2 / (2 * draws)
  const half = ONE_IN_HUNDRED * Math.sqrt((p * (1 - p)) / draws + z2 / (4 * draws ** 2))
  return Math.min(1, (middle + half) / (1 + z2 / draws))
}
