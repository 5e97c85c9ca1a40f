import { area, line, scaleLinear, type ScaleLinear } from 'd3'
import type { Oil } from '../domain/blend/oil'
import { bestCostAt, costOn, type PriceWalk } from '../domain/optimise/reprice/price-walk'
import type { PricePiece } from '../domain/optimise/reprice/price-pieces'
import type { Quantile } from '../domain/chance/quantiles'
import { WHOLE_PERCENT } from '../domain/units'
import { inStripOrder } from './strip'

/** The box of a walk's two drawings, px: the costs above, the shares below. */
export interface WalkFrame {
  readonly width: number
  readonly left: number
  readonly right: number
  readonly costHeight: number
  readonly shareHeight: number
}

/** One oil's part of one blend over the prices it is the cheapest at; px. */
export interface ShareBlock {
  readonly oil: Oil
  readonly sharePercent: number
  readonly x: number
  readonly width: number
  readonly y: number
  readonly height: number
}

/** A walk drawn. */
export interface WalkDrawing {
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
  /** The least cost, the cost of holding, and what lies between them. */
  readonly best: string
  readonly held: string
  readonly gap: string
  readonly blocks: readonly ShareBlock[]
}

/** Part of the costs' span kept free above and below. */
const SPARE_PART = 0.06

/** The costs over the price of an oil, and the shares of the cheapest blend under them. */
export function walkDrawing(
  walk: PriceWalk,
  oils: ReadonlyMap<string, Oil>,
  frame: WalkFrame,
): WalkDrawing {
  const { width, left, right, costHeight } = frame
  const { from, to } = walk.held
  const x = scaleLinear([from, to], [left, Math.max(left, width - right)])
  const prices = [from, ...walk.switches, to]
  const points = prices.map((price) => ({
    price,
    best: bestCostAt(walk, price),
    held: costOn(walk.held, price),
  }))
  const costs = points.flatMap(({ best, held }) => [best, held])
  const [low, high] = [Math.min(...costs), Math.max(...costs)]
  const spare = SPARE_PART * (high > low ? high - low : Math.max(1, high))
  const y = scaleLinear([low - spare, high + spare], [costHeight, 0])
  type Point = (typeof points)[number]
  const across = ({ price }: Point) => x(price)
  const lineOf = (value: (point: Point) => number) =>
    line<Point>(across, (point) => y(value(point))).digits(1)(points) ?? ''
  return {
    x,
    y,
    best: lineOf(({ best }) => best),
    held: lineOf(({ held }) => held),
    gap:
      area<Point>(
        across,
        ({ best }) => y(best),
        ({ held }) => y(held),
      ).digits(1)(points) ?? '',
    blocks: walk.pieces.flatMap((piece) => blocksOf(piece, oils, x, frame.shareHeight)),
  }
}

/** The shares of one blend as blocks one on another, in the order of all strips. */
function blocksOf(
  { from, to, blend }: PricePiece,
  oils: ReadonlyMap<string, Oil>,
  x: ScaleLinear<number, number>,
  height: number,
): ShareBlock[] {
  let top = 0
  return inStripOrder(oils.values())
    .filter(({ id }) => (blend[id] ?? 0) > 0)
    .map((oil) => {
      const sharePercent = blend[oil.id] ?? 0
      const y = top
      top += (sharePercent / WHOLE_PERCENT) * height
      return { oil, sharePercent, x: x(from), width: x(to) - x(from), y, height: top - y }
    })
}

/** Costs that may come, from the 5 % to the 95 % quantile, all on one scale; px. */
export interface CostSpan {
  readonly from: number
  readonly quarter: number
  readonly middle: number
  readonly threeQuarters: number
  readonly to: number
}

/** Spans of costs over a width in px, and the scale they share. */
export function costSpans(
  rows: readonly (readonly Quantile[])[],
  width: number,
  endPx: number,
): { readonly x: ScaleLinear<number, number>; readonly spans: readonly CostSpan[] } {
  const values = rows.flatMap((quantiles) => quantiles.map(({ value }) => value))
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const range = [endPx, Math.max(endPx, width - endPx)]
  const x = scaleLinear([low, high > low ? high : low + 1], range)
  const spans = rows.map((quantiles) => {
    const at = (part: number) => x(quantiles.find((one) => one.part === part)?.value ?? NaN)
    return {
      from: at(0.05),
      quarter: at(0.25),
      middle: at(0.5),
      threeQuarters: at(0.75),
      to: at(0.95),
    }
  })
  return { x, spans }
}
