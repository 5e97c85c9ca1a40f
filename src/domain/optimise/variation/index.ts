export { drawFigures, type Draws, type Figure } from './draws'
export { lotValue, type Lot } from './lot'
export { lotRangeOf, type LotRange } from './lot-range'
export { lotSpan, oilRange } from './lot-span'
export { quantilesOf, type Quantile } from './quantiles'
export { robustPrice, type RobustPrice } from './robust-price'
export { LotSampler } from './sampler'
export {
  type Acids,
  lotSaponificationValue,
  saponificationOfOil,
  saponificationSpan,
} from './saponification'
export { DEFAULT_DRAWS, spreadOf, type BlendSpread, type Spread } from './spread'
export { heldForAnyLot, valueUnderWish, wishedValue } from './wishes'
export { worstOfOil, type Span } from './worst-case'
