export {
  alternativesTo,
  DISTINCT_PERCENT,
  type Alternatives,
  type AlternativesOrder,
} from './alternatives'
export { type Alternative } from './checked'
export { changeBetween, mostDistinct } from './distinct'
export { type Slack } from './slack'
