import type { Limits } from '../domain/optimise/brief/brief'
import { fractionFromPercent, percentFromFraction, WHOLE_PERCENT } from '../domain/units'

/** How far a blend goes by what is there of an oil. */
export type StockUse =
  /** No more than is there. */
  | 'at most'
  /** All of it, no more and no less. */
  | 'all'
  /** What the blend asks for; the rest is bought. */
  | 'buy'

/** What is there of an oil, in g, and how it is to be used in this batch. */
export interface Stock {
  readonly grams: number
  readonly use: StockUse
}

/** The part of a batch of so many g of oils that a stock makes, in percent; at most the whole. */
export function stockPercent({ grams }: Stock, oilGrams: number): number {
  if (!(oilGrams > 0)) return WHOLE_PERCENT
  return Math.min(WHOLE_PERCENT, percentFromFraction(grams / oilGrams))
}

/** Limits on a share, in percent, drawn closer by what is there. */
export function withinStock(limits: Limits, stock: Stock | undefined, oilGrams: number): Limits {
  if (!stock || stock.use === 'buy') return limits
  const percent = stockPercent(stock, oilGrams)
  if (stock.use === 'all') return { min: percent, max: percent }
  if (percent >= WHOLE_PERCENT) return limits
  return { ...limits, max: Math.min(limits.max ?? WHOLE_PERCENT, percent) }
}

/** What is to be bought for a batch beyond what is there, in g; 0 where enough is there. */
export function gramsToBuy(stock: Stock, sharePercent: number, oilGrams: number): number {
  return Math.max(0, fractionFromPercent(sharePercent) * oilGrams - stock.grams)
}
