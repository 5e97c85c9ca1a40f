import type { RivalModel } from './rivals/rival'

/** A corner of a two-axis frontier, both objectives to be least. */
export type Pair = readonly [number, number]

/** So little of the other objective decides between equally good ends, as a part of the axes' widths. */
const TIE_BREAK = 1e-6

/** A corner must lie so far beyond the line between two known ones, as a part of the axes' widths. */
const BEYOND = 1e-6

/**
 * All corners of the efficient side of two objectives by dichotomic search: both ends, then between any
 * two neighbours the best by the weights for which both are equally good, until nothing lies beyond.
 *
 * Source: Y.P. Aneja, K.P.K. Nair, Management Science 25 (1979) 73-78.
 */
export function dichotomicFrontier(
  model: RivalModel,
  first: Float64Array,
  second: Float64Array,
): Pair[] | 'no answer' {
  const cost = new Float64Array(first.length)
  const best = (weights: Pair): Pair | undefined => {
    for (let j = 0; j < cost.length; j++)
      cost[j] = weights[0] * (first[j] ?? NaN) + weights[1] * (second[j] ?? NaN)
    model.setCost(cost)
    model.solve()
    if (typeof model.verdict() !== 'number') return undefined
    const x = model.point()
    return [dot(first, x), dot(second, x)]
  }
  const scale: Pair = [1 / largest(first), 1 / largest(second)]
  const start = best([scale[0], TIE_BREAK * scale[1]])
  const end = best([TIE_BREAK * scale[0], scale[1]])
  if (!start || !end) return 'no answer'
  const found: Pair[] = [start]
  const widths: Pair = [end[0] - start[0], start[1] - end[1]]
  if (!(widths[0] > BEYOND && widths[1] > BEYOND)) return found
  const open: [Pair, Pair][] = [[start, end]]
  for (let pair = open.pop(); pair; pair = open.pop()) {
    const [a, b] = pair
    const weights: Pair = [a[1] - b[1], b[0] - a[0]]
    const next = best(weights)
    if (!next) return 'no answer'
    const gain = weights[0] * (a[0] - next[0]) + weights[1] * (a[1] - next[1])
    const unit = weights[0] * widths[0] + weights[1] * widths[1]
    if (gain > BEYOND * unit) open.push([next, b], [a, next])
    else found.push(b)
  }
  return found
}

/** Σ a · b. */
export function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, k) => sum + value * (b[k] ?? NaN), 0)
}

/** The largest size of any value; 1 of nothing but zeros. */
export function largest(values: Float64Array): number {
  return values.reduce((most, one) => Math.max(most, Math.abs(one)), 0) || 1
}
