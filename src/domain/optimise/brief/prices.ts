import type { Prices } from '../../blend/blend'
import { type Brief, pricesOf, type ShelfOil } from './brief'

/** The brief with prices in money per kg put in place of its own; oils not on its shelf are passed over. */
export function withPrices(brief: Brief, prices: Prices): Brief {
  const oils = Object.entries(brief.oils).map(([oil, shelf]): [string, ShelfOil] => {
    const price = Object.hasOwn(prices, oil) ? prices[oil] : undefined
    return [oil, price === undefined ? shelf : { ...shelf, pricePerKg: price }]
  })
  return { ...brief, oils: Object.fromEntries(oils) }
}

/** Whether every oil of the shelf has a price. */
export function isPriced(brief: Brief): boolean {
  const prices = pricesOf(brief)
  return Object.keys(brief.oils).every((oil) => Object.hasOwn(prices, oil))
}
