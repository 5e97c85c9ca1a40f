import { range, scaleLinear, type ScaleLinear } from 'd3'

/** A measure's shared axis: its scale over px, where ticks stand and what ties with the reference. */
export interface BenchAxis {
  readonly x: ScaleLinear<number, number>
  readonly ticks: readonly number[]
  /** Values that can't be told from the reference; undefined without one. */
  readonly tieZone: readonly [number, number] | undefined
}

/** Ticks stand a tie apart, or a doubled tie, until there are at most so many. */
const MOST_TICKS = 8

/** Bare axis beyond the outermost value, in ties. */
const SPARE_TIES = 0.6

/** Under this a span has so few ties that ticks a tie apart would leave the axis bare. */
const FEW_TIES = 2

/** So many ticks where a tie is too fine a step, as of money. */
const LOOSE_TICKS = 6

/** The span to show around a tie too fine to be seen, as a part of the values' own span. */
const SPARE_PART = 0.08

/**
 * One axis for all bars of a measure over a width in px with `endPx` kept free at both ends. All values and the
 * whole tie zone (reference ± tie) are in sight. A tick is a tie; where that would crowd, ties are
 * doubled, and where a tie is a small part of the span (money) round figures stand instead.
 */
export function benchAxis(
  values: readonly number[],
  reference: number | undefined,
  tie: number,
  width: number,
  endPx: number,
): BenchAxis {
  const tieZone =
    reference === undefined ? undefined : ([reference - tie, reference + tie] as const)
  const shown = [...values, ...(tieZone ?? [])]
  const [low, high] = shown.length > 0 ? [Math.min(...shown), Math.max(...shown)] : [0, tie]
  const span = high - low
  const spare = Math.max(tie * SPARE_TIES, span * SPARE_PART)
  const x = scaleLinear([low - spare, high + spare], [endPx, width - endPx])
  return { x, tieZone, ticks: ticksOn(x, tie) }
}

function ticksOn(x: ScaleLinear<number, number>, tie: number): number[] {
  const [low = 0, high = 0] = x.domain()
  const ties = (high - low) / tie
  if (ties < FEW_TIES || ties > 2 * MOST_TICKS) return x.ticks(LOOSE_TICKS)
  const step = ties > MOST_TICKS ? 2 * tie : tie
  return range(Math.ceil(low / step), Math.floor(high / step) + 1).map((count) => count * step)
}

/**
 * Where letters of one width (px) go so that none overlaps and each is as near to its own place as can
 * be, in the least-squares sense: pool-adjacent-violators (isotonic regression; Barlow et al. 1972,
 * Statistical Inference under Order Restrictions) on places less their turn. `low` and `high` bound the
 * centres. Answers in the order of `places`; room for all of them is the caller's to see to.
 */
export function spreadLetters(
  places: readonly number[],
  width: number,
  low: number,
  high: number,
): number[] {
  const order = places.map((_, index) => index).sort((a, b) => at(places, a) - at(places, b))
  const rising = nearestRising(order.map((index, turn) => at(places, index) - turn * width))
  const most = Math.max(low, high - (places.length - 1) * width)
  const found = new Array<number>(places.length)
  order.forEach((index, turn) => {
    found[index] = Math.min(most, Math.max(low, at(rising, turn))) + turn * width
  })
  return found
}

/** The values that never fall and lie nearest to some others in the least-squares sense. */
function nearestRising(values: readonly number[]): number[] {
  const pools: { sum: number; count: number }[] = []
  const mean = ({ sum, count }: { sum: number; count: number }) => sum / count
  for (const value of values) {
    let pool = { sum: value, count: 1 }
    for (let last = pools.at(-1); last && mean(last) > mean(pool); last = pools.at(-1)) {
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count }
      pools.pop()
    }
    pools.push(pool)
  }
  return pools.flatMap((pool) => new Array<number>(pool.count).fill(mean(pool)))
}

const at = (values: readonly number[], index: number) => values[index] ?? NaN

/** How many letters of a width fit side by side between two bounds of their centres, px. */
export function lettersThatFit(width: number, low: number, high: number): number {
  return Math.max(1, 1 + Math.floor((high - low) / width))
}
