export type { PricePiece, PricePieces } from './price-pieces'
export { PriceSolver } from './price-solver'
export { type PricePoint, yearlyLogSpread } from './price-spread'
export {
  bestCostAt,
  costOn,
  priceWalk,
  type PriceWalk,
  type PriceWalkAnswer,
  type PriceWalkOrder,
} from './price-walk'
export { withPrices } from './prices'
export {
  pricesTogether,
  type Together,
  type TogetherAnswer,
  type TogetherOrder,
  type Winner,
} from './together'
