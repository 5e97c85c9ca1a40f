import type { LinearProgram } from '../../src/domain/lp/program'
import { at, product, Random } from './random'

/**
 * A general small program: free, one-sided and boxed variables, any kind of row, small whole
 * numbers (so ties abound). Half of them have a planted point, half a cost that some prices
 * support; so they may be feasible or not, bounded or not, in every combination.
 */
export function generalProgram(seed: number): LinearProgram {
  const random = new Random(seed)
  const n = random.int(1, 12)
  const m = random.int(1, 10)
  const spread = random.pick([2, 5, 20])
  const full = random.pick([0.3, 0.6, 1])
  const entry = (): number => (random.chance(full) ? random.int(-spread, spread) : 0)
  const point = random.chance(0.6) ? Array.from({ length: n }, entry) : null
  const bounds = Array.from({ length: n }, (_, j) =>
    drawRange(random, spread, [0.5, 0.65, 0.75, 0.95], point && at(point, j)),
  )
  const rows = Array.from({ length: m }, () => {
    const coefficients = Array.from({ length: n }, entry)
    const value = point && product(coefficients, point)
    return { coefficients, ...drawRange(random, 3 * spread, [0.4, 0.8, 0.83, 0.9], value) }
  })
  return {
    cost: random.chance(0.6)
      ? supportedCost(random, bounds, rows)
      : Array.from({ length: n }, entry),
    lower: bounds.map((range) => range.lower),
    upper: bounds.map((range) => range.upper),
    rows,
  }
}

/** A cost for which row prices exist that prove some bound: no unbounded ray can have it. */
function supportedCost(
  random: Random,
  bounds: readonly { lower: number; upper: number }[],
  rows: LinearProgram['rows'],
): number[] {
  const price = (range: { lower: number; upper: number }): number =>
    random.int(range.upper < Infinity ? -3 : 0, range.lower > -Infinity ? 3 : 0)
  const prices = rows.map(price)
  return bounds.map((range, j) =>
    rows.reduce((sum, row, i) => sum + at(prices, i) * (row.coefficients[j] ?? NaN), price(range)),
  )
}

/**
 * Lower only, upper only, free, two-sided or fixed, by four rising probabilities; around `value`
 * where one is given.
 */
function drawRange(
  random: Random,
  spread: number,
  [lowerOnly, upperOnly, free, twoSided]: readonly [number, number, number, number],
  value: number | null,
): { lower: number; upper: number } {
  const kind = random.next()
  if (value !== null) {
    const below = random.chance(0.4) ? value : value - random.int(0, spread)
    const above = random.chance(0.4) ? value : value + random.int(0, spread)
    if (kind < lowerOnly) return { lower: below, upper: Infinity }
    if (kind < upperOnly) return { lower: -Infinity, upper: above }
    if (kind < free) return { lower: -Infinity, upper: Infinity }
    return kind < twoSided ? { lower: below, upper: above } : { lower: value, upper: value }
  }
  const lower = random.chance(0.4) ? 0 : random.int(-spread, spread)
  if (kind < lowerOnly) return { lower, upper: Infinity }
  if (kind < upperOnly) return { lower: -Infinity, upper: lower }
  if (kind < free) return { lower: -Infinity, upper: Infinity }
  if (kind < twoSided) return { lower, upper: lower + random.int(0, spread) }
  return { lower, upper: lower }
}
